import { airflowEvidence } from "../airflow-evidence";
import { hasOutdoor } from "../has-outdoor";
import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Row 7: the zone is at its heating setpoint in the cooling season and reheats the air of its own minimum. */
export function reheatAtMinimum(zone: ZoneEvidence): Cause | null {
  const { reheatAtMinimum: hours, observed } = zone.statistics.rules;
  // In winter reheat is heating: without outdoor air nobody can tell (reference D7: outdoor air above 13 °C).
  if (!isWorthNaming(hours, observed) || !hasOutdoor(zone)) return null;
  return {
    code: "reheat-at-minimum",
    severity: "caution",
    evidence: {
      ...airflowEvidence(zone),
      trends: ["zone-air-temp", "heating-setpoint", "reheat-valve", "airflow"],
      ...seenIn(zone, "reheatAtMinimum"),
      hours,
      ofHours: observed,
      meanZoneAirC: zone.exposure.byState.reheat.meanZoneAirTempC,
      setpointC: zone.statistics.heatingSetpoint?.occupiedMedianC ?? null,
    },
  };
}
