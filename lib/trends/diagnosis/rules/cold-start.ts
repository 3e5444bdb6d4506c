import { isColdByRecord } from "../overcooled";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** How far under the target the zone is early, and how much it recovers by midday [K] (reference D7, row 3; the 1 K of "cold" there). */
const COLD_K = 1;
/** Share of the degree-hours that fall before 10:00 for the start to be the matter. Judgement, no source. */
const EARLY_FRACTION = 0.5;

/** Row 3: on working days the zone is cold at 06-09 h and recovers by 11-16 h: precooling, purge or no setback. */
export function coldStart(zone: ZoneEvidence): Cause | null {
  const workdays = zone.statistics.weekHourMeansC.slice(0, 5);
  const early = meanOf(workdays.flatMap((hours) => hours.slice(6, 9)));
  const midday = meanOf(workdays.flatMap((hours) => hours.slice(11, 16)));
  const { earlyOvercoolingKh, overcoolingKh, observed } = zone.statistics.rules;
  const target = zone.exposure.targetZoneAirTempC;
  if (early === null || midday === null || !isColdByRecord(zone)) return null;
  if (early > target - COLD_K || midday - early < COLD_K) return null;
  if (earlyOvercoolingKh < EARLY_FRACTION * overcoolingKh) return null;
  return {
    code: "cold-start",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp"],
      earlyMeanC: early,
      middayMeanC: midday,
      targetC: target,
      earlyOvercoolingKh,
      overcoolingKh,
      ofHours: observed,
    },
  };
}

function meanOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((each) => each !== null);
  return known.length > 0 ? known.reduce((sum, each) => sum + each, 0) / known.length : null;
}
