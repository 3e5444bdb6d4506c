import type { Cause, ZoneEvidence } from "../zone-evidence";
import { hotBalance, speaksForZone } from "../zone-wide-reports";

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
