import { isColdByRecord } from "../overcooled";
import { oneDeskProbability } from "../report-chance";
import { countReports, isCold } from "../report-counts";
import type { Cause, ZoneEvidence } from "../zone-evidence";

/** Share of a zone's cold reports from one desk for the others to count as neutral. Judgement, no source. */
const ONE_DESK_SHARE = 0.75;
/** Chance at or below which so many reports from one desk are more than luck. The usual 5 %, judgement. */
const ONE_DESK_CHANCE = 0.05;

/** Row 14: the cold reports come from one desk, more of them than luck would bring, while the zone is not cold by its record. */
export function oneColdDesk(zone: ZoneEvidence): Cause | null {
  const cold = countReports(zone.reports, isCold);
  const desk = cold.busiest?.desk;
  if (!cold.busiest || cold.busiest.reports < ONE_DESK_SHARE * cold.reports || isColdByRecord(zone)) return null;
  const desks = Math.max(zone.deskCount, cold.desks.length);
  const chance = oneDeskProbability({ busiest: cold.busiest.reports, reports: cold.reports, desks });
  if (chance > ONE_DESK_CHANCE) return null;
  const others = countReports(zone.reports, (each) => each.desk !== desk);
  return {
    code: "one-cold-desk",
    severity: "note",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp"],
      desk: cold.busiest.desk,
      reports: cold.busiest.reports,
      ofReports: cold.reports,
      otherDesksReporting: others.desks.length,
      meanZoneAirC: zone.exposure.occupiedZoneAirTempC?.mean ?? null,
      targetC: zone.exposure.targetZoneAirTempC,
    },
  };
}
