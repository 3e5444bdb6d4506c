import { isColdByRecord } from "./overcooled";
import { oneDeskProbability } from "./report-chance";
import { countReports, isCold } from "./report-counts";
import { isWorthNaming } from "./worth-naming";
import type { Cause, ZoneEvidence } from "./zone-evidence";
import { hotBalance, speaksForZone } from "./zone-wide-reports";

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

/**
 * Row 15: all the air its box can give does not hold the zone. Either the trend shows it by itself (at design airflow and
 * over 0.5 K above both the cooling setpoint and the target), or the zone is at its cooling setpoint with all its air and hot
 * reports speak for it.
 */
export function shortOfAir(zone: ZoneEvidence): Cause | null {
  const { designAirflowAtSetpoint: hours, designAirflowTooWarm: tooWarmHours, observed } = zone.statistics.rules;
  const hot = hotBalance(zone);
  if (!isShortByRecord(zone) && !(speaksForZone(hot) && isWorthNaming(hours, observed))) return null;
  return {
    code: "short-of-air",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["airflow", "zone-air-temp", "cooling-setpoint"],
      hours,
      ofHours: observed,
      tooWarmHours,
      designAirflowM3ps: zone.limits.designAirflowM3ps,
      reports: hot.count.reports,
      desks: hot.count.desks,
    },
  };
}

/** The trend itself shows a zone that all its air cannot hold. */
export const isShortByRecord = (zone: ZoneEvidence): boolean =>
  isWorthNaming(zone.statistics.rules.designAirflowTooWarm, zone.statistics.rules.observed);

/** Hot reports of the cooling season that speak for the zone; why is for row 15 or a look on site. */
export function hotReports(zone: ZoneEvidence): Cause | null {
  const hot = hotBalance(zone);
  if (!speaksForZone(hot)) return null;
  return {
    code: "hot-reports",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp", "cooling-setpoint"],
      reports: hot.count.reports,
      coldReports: hot.opposite,
      desks: hot.count.desks,
      chancePct: 100 * hot.chance,
      perDeskYear: hot.perDeskYear,
      aboveSetpointHours: zone.statistics.rules.aboveSetpoint,
      ofHours: zone.statistics.rules.observed,
      meanZoneAirC: zone.exposure.occupiedZoneAirTempC?.mean ?? null,
    },
  };
}
