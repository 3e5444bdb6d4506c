import { airflowEvidence } from "../airflow-evidence";
import { hasOutdoor } from "../has-outdoor";
import { isOvercooled } from "../overcooled";
import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Row 8: a cold zone drifts under its cooling setpoint with the valve closed and the airflow at its minimum. */
export function minimumAirflowOvercooling(zone: ZoneEvidence): Cause | null {
  const { driftAtMinimum: hours, observed } = zone.statistics.rules;
  if (!isWorthNaming(hours, observed) || !isOvercooled(zone) || !hasOutdoor(zone)) return null;
  return {
    code: "minimum-airflow-overcooling",
    severity: "caution",
    evidence: {
      ...airflowEvidence(zone),
      trends: ["zone-air-temp", "cooling-setpoint", "airflow", "reheat-valve", "heating-setpoint", "damper-position"],
      ...seenIn(zone, "driftAtMinimum"),
      hours,
      ofHours: observed,
      meanZoneAirC: zone.exposure.byState.deadband.meanZoneAirTempC,
      setpointC: zone.statistics.coolingSetpoint?.occupiedMedianC ?? null,
      overcoolingKh: zone.exposure.byState.deadband.overcoolingKh,
    },
  };
}
