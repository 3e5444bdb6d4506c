import { countReportsByZone } from "@/db/queries/comfort";
import { countDevicesByZone } from "@/db/queries/devices";
import { countDesksByZone, type ZoneRow } from "@/db/queries/zones";
import { isCold, isHot } from "@/lib/trends/diagnosis/report-counts";
import type { Context } from "../context";

/** What is on record of a zone: always of now. */
export type ZoneCounts = {
  zone: ZoneRow;
  desks: number;
  heaters: number;
  fans: number;
  coldReports: number;
  hotReports: number;
};

/** What stands where, counted by the database: pages ask for it at every visit. */
export function zoneCounts(ctx: Context, buildingId: number, zones: readonly ZoneRow[]): ZoneCounts[] {
  const desks = countDesksByZone(ctx.db, buildingId);
  const devices = countDevicesByZone(ctx.db, buildingId);
  const reports = countReportsByZone(ctx.db, buildingId);
  return zones.map((zone) => {
    const votes = (reports.get(zone.id) ?? []).map((vote) => ({ ...vote, desk: null, zoneAirTempC: null }));
    const count = (which: (vote: (typeof votes)[number]) => boolean): number =>
      votes.reduce((sum, vote) => sum + (which(vote) ? vote.count : 0), 0);
    return {
      zone,
      desks: desks.get(zone.id) ?? 0,
      heaters: devices.get(zone.id)?.["space-heater"] ?? 0,
      fans: devices.get(zone.id)?.["personal-fan"] ?? 0,
      coldReports: count(isCold),
      hotReports: count(isHot),
    };
  });
}
