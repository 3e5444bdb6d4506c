import { isColdByRecord } from "./overcooled";
import { countReports, isCold, isHot, isZoneWide } from "./report-counts";
import { isWorthNaming } from "./worth-naming";
import type { Cause, ZoneEvidence } from "./zone-evidence";

/** Row 14: repeated cold reports from one desk only while the zone is not cold by its record. */
export function oneColdDesk(zone: ZoneEvidence): Cause | null {
  const cold = countReports(zone.reports, isCold);
  const desk = cold.desks[0];
  if (cold.desks.length !== 1 || desk === undefined || cold.withoutDesk > 0 || cold.reports < 2) return null;
  if (isColdByRecord(zone)) return null;
  const others = countReports(zone.reports, (each) => each.desk !== desk);
  return {
    code: "one-cold-desk",
    severity: "note",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp"],
      desk,
      reports: cold.reports,
      otherDesksReporting: others.desks.length,
      meanZoneAirC: zone.exposure.occupiedZoneAirTempC?.mean ?? null,
      targetC: zone.exposure.targetZoneAirTempC,
    },
  };
}

/** Row 15: hot reports while the zone is at or above its cooling setpoint with all the air its box can give. */
export function shortOfAir(zone: ZoneEvidence): Cause | null {
  const hot = countReports(zone.reports, isHot);
  const { designAirflowAtSetpoint: hours, observed } = zone.statistics.rules;
  if (hot.reports < 1 || !isWorthNaming(hours, observed)) return null;
  return {
    code: "short-of-air",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["airflow", "zone-air-temp", "cooling-setpoint"],
      hours,
      ofHours: observed,
      designAirflowM3ps: zone.limits.designAirflowM3ps,
      reports: hot.reports,
      desks: hot.desks,
    },
  };
}

/** Hot reports of more than one person that outnumber the cold ones; why is for row 15 or a look on site. */
export function hotReports(zone: ZoneEvidence): Cause | null {
  const hot = countReports(zone.reports, isHot);
  const cold = countReports(zone.reports, isCold);
  if (!isZoneWide(hot) || hot.reports <= cold.reports) return null;
  return {
    code: "hot-reports",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp", "cooling-setpoint"],
      reports: hot.reports,
      coldReports: cold.reports,
      desks: hot.desks,
      aboveSetpointHours: zone.statistics.rules.aboveSetpoint,
      ofHours: zone.statistics.rules.observed,
      meanZoneAirC: zone.exposure.occupiedZoneAirTempC?.mean ?? null,
    },
  };
}
