import { listDevices } from "@/db/queries/devices";
import { listHeldReports } from "@/db/queries/held-reports";
import { countInbox, countToAnswer, listAnswerTimes, listInbox, listOpenVotes } from "@/db/queries/report-inbox";
import { listDesks, listZones } from "@/db/queries/zones";
import { LEAST_PEOPLE } from "@/lib/comfort-reports/disclosure/disclose-counts";
import { leastPeople } from "@/lib/comfort-reports/disclosure/least-people";
import { countPersonDays, isDeskDeleted } from "@/lib/comfort-reports/person-days";
import { OPEN_STATES, REPORT_STATES } from "@/lib/comfort-reports/report-state";
import { median } from "@/lib/statistics/quantile";
import { zoneTable } from "@/lib/time/zone-table";
import { isCold, isHot, isZoneWide } from "@/lib/trends/diagnosis/report-counts";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import type { ComfortReportView } from "./list";

export const INBOX_PAGE = 50;
const DAY_MS = 86_400_000;
/** Stretch that response times are taken from. */
export const RESPONSE_DAYS = 90;

/** Which reports the list shows; anything else that is asked for shows the open ones. */
export type InboxView = "open" | "all" | (typeof REPORT_STATES)[number];
export const isInboxView = (word: string): word is InboxView =>
  word === "open" || word === "all" || (REPORT_STATES as readonly string[]).includes(word);

/** Open reports of one zone, summed up. */
export type OpenZone = {
  zoneId: number;
  zoneCode: string;
  reports: number;
  /** Repeats of one desk, or through one link, on one day counted once. */
  personDays: number;
  cold: number;
  hot: number;
  /** By the rule of `isZoneWide`, of cold and hot reports apart. */
  reach: "one-desk" | "zone-wide";
  oldestAtMs: number;
  devices: number;
};

export type Inbox = {
  zones: OpenZone[];
  reports: ComfortReportView[];
  count: number;
  page: number;
  pages: number;
  held: number;
  /** `medianMs`: null where fewer than five people were answered. */
  response: { days: number; reports: number; answered: number; medianMs: number | null };
};

/** The inbox: zones with open reports, the one with most people first, and one page of the list. */
export function readInbox(
  ctx: Context,
  buildingId: number,
  wanted: { view?: InboxView; zoneId?: number | null; page?: number } = {},
): Inbox {
  requireFacilities(ctx);
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const zones = new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code]));
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  const { view = "open", zoneId = null } = wanted;
  const states = view === "open" ? OPEN_STATES : view === "all" ? null : [view];
  const count = countInbox(ctx.db, buildingId, { states, zoneId });
  const pages = Math.max(1, Math.ceil(count / INBOX_PAGE));
  const page = Math.min(pages, Math.max(1, Math.floor(wanted.page ?? 1) || 1));
  const rows = listInbox(
    ctx.db,
    buildingId,
    { states, zoneId },
    { limit: INBOX_PAGE, offset: (page - 1) * INBOX_PAGE },
  );
  const times = listAnswerTimes(ctx.db, buildingId, ctx.now - RESPONSE_DAYS * DAY_MS);
  const isGroup = leastPeople(times.map(({ deskId }) => deskId)) >= LEAST_PEOPLE.screen;
  return {
    zones: openZones(ctx, buildingId, timeZone, zones),
    reports: rows.map((report) => ({
      ...report,
      zoneCode: zones.get(report.zoneId) ?? "",
      deskCode: report.deskId === null ? null : (desks.get(report.deskId) ?? null),
    })),
    count,
    page,
    pages,
    held: listHeldReports(ctx.db, buildingId).length,
    response: {
      days: RESPONSE_DAYS,
      reports: countToAnswer(ctx.db, buildingId, ctx.now - RESPONSE_DAYS * DAY_MS),
      answered: times.length,
      medianMs: isGroup ? median(times.map(({ tookMs }) => tookMs)) : null,
    },
  };
}

type OpenVote = ReturnType<typeof listOpenVotes>[number];

function openZones(ctx: Context, buildingId: number, timeZone: string, codes: ReadonlyMap<number, string>): OpenZone[] {
  const table = zoneTable(timeZone);
  const offsetMsAt = (atMs: number): number => table.offsetAt(Math.floor(atMs / 1000)) * 1000;
  const byZone = new Map<number, OpenVote[]>();
  for (const vote of listOpenVotes(ctx.db, buildingId, OPEN_STATES)) {
    const votes = byZone.get(vote.zoneId);
    if (votes) votes.push(vote);
    else byZone.set(vote.zoneId, [vote]);
  }
  const devices = new Map<number, number>();
  for (const { zoneId, retiredOn } of listDevices(ctx.db, buildingId))
    if (retiredOn === null && zoneId !== null) devices.set(zoneId, (devices.get(zoneId) ?? 0) + 1);
  const summed = [...byZone].map(([zoneId, votes]): OpenZone => {
    const [cold, hot] = [votes.filter(isCold), votes.filter(isHot)];
    return {
      zoneId,
      zoneCode: codes.get(zoneId) ?? "",
      reports: votes.length,
      personDays: countPersonDays(votes, offsetMsAt),
      cold: cold.length,
      hot: hot.length,
      reach: [cold, hot].some(comesFromSeveral) ? "zone-wide" : "one-desk",
      oldestAtMs: votes[0]?.reportedAtMs ?? ctx.now,
      devices: devices.get(zoneId) ?? 0,
    };
  });
  return summed.sort((a, b) => b.personDays - a.personDays || a.oldestAtMs - b.oldestAtMs);
}

/** The diagnosis' rule for more than one person. */
const comesFromSeveral = (votes: readonly OpenVote[]): boolean => {
  const desks = new Set(votes.flatMap(({ deskId }) => (deskId === null ? [] : [String(deskId)])));
  const withoutDesk = votes.filter((vote) => vote.deskId === null && !isDeskDeleted(vote)).length;
  return isZoneWide({ reports: votes.length, desks: [...desks], withoutDesk, busiest: null });
};
