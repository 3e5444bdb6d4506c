import { countReportsByZone } from "@/db/queries/comfort";
import { countDevicesByZone } from "@/db/queries/devices";
import { countPeopleByZone, countReportsInStates } from "@/db/queries/report-counts";
import { countDesksByZone, listZones, type ZoneRow } from "@/db/queries/zones";
import {
  type Disclosure,
  discloseCounts,
  LEAST_PEOPLE,
  type OccupantGroup,
} from "@/lib/comfort-reports/disclosure/disclose-counts";
import { OPEN_STATES } from "@/lib/comfort-reports/report-state";
import { isCold, isHot } from "@/lib/trends/diagnosis/report-counts";
import type { Context } from "../context";

/** What is on record of a zone: always of now. */
export type ZoneCounts = {
  zone: ZoneRow;
  desks: number;
  heaters: number;
  fans: number;
  /** Those that somebody still has to see to: whoever sees to them may see each. */
  openReports: number;
  /** Null where too few people reported for their counts to stand by themselves. */
  coldReports: number | null;
  hotReports: number | null;
};

/** Which counts of reports may be shown of a building's zones. */
export type ZoneReportCounts = Disclosure<number, "cold" | "hot">;

/** What stands where, counted by the database: pages ask for it at every visit. */
export function zoneCounts(
  ctx: Context,
  buildingId: number,
  wanted?: readonly ZoneRow[],
): { zones: ZoneCounts[]; reports: ZoneReportCounts } {
  const all = listZones(ctx.db, buildingId);
  const desks = countDesksByZone(ctx.db, buildingId);
  const devices = countDevicesByZone(ctx.db, buildingId);
  const open = countReportsInStates(ctx.db, buildingId, OPEN_STATES);
  const counts = reportCounts(ctx, buildingId, all);
  // Of all zones, whichever are asked for: what is hidden beside others must be hidden alone.
  const reports = discloseCounts(counts, ["cold", "hot"], LEAST_PEOPLE.screen);
  const byZone = new Map(counts.map((each) => [each.key, each.counts]));
  const zones = (wanted ?? all).map((zone) => {
    const own = reports.hidden.has(zone.id) ? null : byZone.get(zone.id);
    return {
      zone,
      desks: desks.get(zone.id) ?? 0,
      heaters: devices.get(zone.id)?.["space-heater"] ?? 0,
      openReports: open.get(zone.id) ?? 0,
      fans: devices.get(zone.id)?.["personal-fan"] ?? 0,
      coldReports: own?.cold ?? null,
      hotReports: own?.hot ?? null,
    };
  });
  return { zones, reports };
}

/** Cold and hot reports of each zone, with how many people they are of at least: not to be shown as they are. */
export function reportCounts(
  ctx: Pick<Context, "db">,
  buildingId: number,
  zones: readonly ZoneRow[],
): OccupantGroup<number, "cold" | "hot">[] {
  const people = countPeopleByZone(ctx.db, buildingId);
  const reports = countReportsByZone(ctx.db, buildingId);
  return zones.map(({ id }) => {
    const votes = reports.get(id) ?? [];
    const count = (which: (vote: (typeof votes)[number]) => boolean): number =>
      votes.reduce((sum, vote) => sum + (which(vote) ? vote.count : 0), 0);
    return { key: id, people: people.get(id) ?? 0, counts: { cold: count(isCold), hot: count(isHot) } };
  });
}
