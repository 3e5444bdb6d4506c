import { seenIn } from "../seen-in";
import { isWorthNaming } from "../worth-naming";
import type { Cause, ZoneEvidence } from "../zone-evidence";
import { hotBalance, speaksForZone } from "../zone-wide-reports";

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
      ...seenIn(zone, "designAirflowAtSetpoint"),
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
