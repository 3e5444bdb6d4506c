import { countReports, isCold } from "../report-counts";
import type { Cause, ZoneEvidence } from "../zone-evidence";
import { anyReport, reportBalance, speaksForZone } from "../zone-wide-reports";

/**
 * Row 1, by the people: cold reports that speak for the zone and came while it read at or above the target. The
 * sensor may be wrong, or the desks colder than the sensor's place (draught, cold glass).
 */
export function coldReportsAtTarget(zone: ZoneEvidence): Cause | null {
  const target = zone.exposure.targetZoneAirTempC;
  const cold = countReports(zone.reports, isCold);
  const atTarget = reportBalance(zone, "cold", {
    own: (each) => each.zoneAirTempC !== null && each.zoneAirTempC >= target,
    opposite: anyReport,
  });
  if (atTarget.count.reports * 2 < cold.reports || !speaksForZone(atTarget)) return null;
  return {
    code: "cold-reports-at-target",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp"],
      reports: atTarget.count.reports,
      ofReports: cold.reports,
      hotReports: atTarget.opposite,
      desks: atTarget.count.desks,
      targetC: target,
    },
  };
}
