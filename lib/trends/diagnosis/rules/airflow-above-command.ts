import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Row 4: the damper stands at its minimum and over 1.5 of the minimum airflow passes. */
export function airflowAboveCommand(zone: ZoneEvidence): Cause | null {
  const { airflowAboveCommand: hours, observed } = zone.statistics.rules;
  if (!isWorthNaming(hours, observed)) return null;
  return {
    code: "airflow-above-command",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["damper-position", "airflow", "reheat-valve", "zone-air-temp", "cooling-setpoint"],
      ...seenIn(zone, "airflowAboveCommand"),
      hours,
      ofHours: observed,
      minimumAirflowM3ps: zone.limits.minimumAirflowM3ps,
      minimumAirflowOrigin: zone.minimumAirflowOrigin,
      meanAirflowM3ps: zone.exposure.byState.fault.meanAirflowM3ps,
    },
  };
}
