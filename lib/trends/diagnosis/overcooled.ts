import type { ZoneEvidence } from "./zone-evidence";
import { inSeason, reportBalance, speaksForZone } from "./zone-wide-reports";

/** Share of cooling-season hours with zone air 1 K below the target from which a zone is cold. Judgement, no source. */
export const COLD_HOURS_FRACTION = 0.1;
/** Mean shortfall below the target from which a zone is cold [K]: the tolerance of reference Q9 for reporting. */
export const MEAN_SHORTFALL_K = 0.5;

/** Mean of max(0, target - zone air) over the cooling-season hours [K]. */
export const meanShortfallK = (zone: ZoneEvidence): number =>
  zone.statistics.rules.observed > 0 ? zone.statistics.rules.overcoolingKh / zone.statistics.rules.observed : 0;

/** Whether the record itself shows a cold zone (reference D7: zone air 1 K and more below the target). */
export const isColdByRecord = (zone: ZoneEvidence): boolean =>
  zone.statistics.rules.cold >= COLD_HOURS_FRACTION * Math.max(zone.statistics.rules.observed, 1) ||
  meanShortfallK(zone) >= MEAN_SHORTFALL_K;

/** Cold by record, or by cold reports that speak for the zone and came in the cooling season with zone air below the target. */
export function isOvercooled(zone: ZoneEvidence): boolean {
  if (isColdByRecord(zone)) return true;
  const target = zone.exposure.targetZoneAirTempC;
  return speaksForZone(
    reportBalance(zone, "cold", {
      own: (each) => inSeason(each) && each.zoneAirTempC !== null && each.zoneAirTempC < target,
      opposite: inSeason,
    }),
  );
}
