import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Gap of the setpoints below which reheat and cooling fight [K] (reference D7, row 12: 5 °F). */
const DEADBAND_K = 2.8;
/** Alternations per 100 occupied hours worth naming. Judgement, no source. */
const ALTERNATIONS_PER_100_H = 2;

/** Row 12: setpoints under 2.8 K apart, and the zone goes from reheat to cooling or back within an hour. */
export function narrowDeadband(zone: ZoneEvidence): Cause | null {
  const { medianDeadbandK, alternations, observed } = zone.statistics.rules;
  if (medianDeadbandK === null || medianDeadbandK >= DEADBAND_K) return null;
  if (alternations < 5 || alternations * 100 < ALTERNATIONS_PER_100_H * observed) return null;
  return {
    code: "narrow-deadband",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["cooling-setpoint", "heating-setpoint", "reheat-valve", "airflow"],
      deadbandK: medianDeadbandK,
      neededK: DEADBAND_K,
      alternations,
      ofHours: observed,
    },
  };
}
