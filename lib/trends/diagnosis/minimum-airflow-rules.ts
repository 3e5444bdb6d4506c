import type { Evidence } from "@/lib/findings/finding";
import { isOvercooled } from "./overcooled";
import { isWorthNaming } from "./worth-naming";
import type { Cause, ZoneEvidence } from "./zone-evidence";

/** Row 7: the zone is at its heating setpoint in the cooling season and reheats the air of its own minimum. */
export function reheatAtMinimum(zone: ZoneEvidence): Cause | null {
  const { reheatAtMinimum: hours, observed } = zone.statistics.rules;
  if (!isWorthNaming(hours, observed)) return null;
  return {
    code: "reheat-at-minimum",
    severity: "caution",
    evidence: {
      ...airflowEvidence(zone),
      trends: ["zone-air-temp", "heating-setpoint", "reheat-valve", "airflow"],
      hours,
      ofHours: observed,
      meanZoneAirC: zone.exposure.byState.reheat.meanZoneAirTempC,
      setpointC: zone.statistics.heatingSetpoint?.occupiedMedianC ?? null,
    },
  };
}

/** Row 8: a cold zone drifts under its cooling setpoint with the valve closed and the airflow at its minimum. */
export function minimumAirflowOvercooling(zone: ZoneEvidence): Cause | null {
  const { driftAtMinimum: hours, observed } = zone.statistics.rules;
  if (!isWorthNaming(hours, observed) || !isOvercooled(zone)) return null;
  return {
    code: "minimum-airflow-overcooling",
    severity: "caution",
    evidence: {
      ...airflowEvidence(zone),
      trends: [
        "zone-air-temp",
        "cooling-setpoint",
        "airflow",
        "reheat-valve",
        ...(zone.exposure.hasTrend.damper ? ["damper-position"] : []),
      ],
      hours,
      ofHours: observed,
      meanZoneAirC: zone.exposure.byState.deadband.meanZoneAirTempC,
      setpointC: zone.statistics.coolingSetpoint?.occupiedMedianC ?? null,
      overcoolingKh: zone.exposure.byState.deadband.overcoolingKh,
    },
  };
}

function airflowEvidence(zone: ZoneEvidence): Evidence {
  const { minimumAirflowM3ps, designAirflowM3ps } = zone.limits;
  return {
    zone: zone.zoneCode,
    minimumAirflowM3ps,
    minimumAirflowOrigin: zone.minimumAirflowOrigin,
    minimumPctOfDesign:
      minimumAirflowM3ps !== null && designAirflowM3ps !== null ? (100 * minimumAirflowM3ps) / designAirflowM3ps : null,
  };
}
