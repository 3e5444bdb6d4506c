import type { BuildingRow } from "@/db/queries/buildings";
import { listComfortReports } from "@/db/queries/comfort";
import { leastPeople } from "@/lib/comfort-reports/disclosure/least-people";
import { personDayKey } from "@/lib/comfort-reports/person-days";
import { zoneTable } from "@/lib/time/zone-table";
import { airAtReports } from "../comfort-reports/air-at-reports";
import type { Context } from "../context";
import type { ResultKind } from "../kept/result-kind";
import { buildingRecord } from "../zone-analysis/building-record";
import { seasonThresholdC } from "../zones/overview";
import { deskHoursByZone, type VoteSeason, type ZoneDeskHours } from "./exposure";

/** A person-day that wanted it warmer or cooler, by zone, season and whole degree. */
export type SideCount = { zoneId: number; season: VoteSeason; airTempC: number; tooCold: number; tooWarm: number };

/** What a building's reports and hours say of both sides, before any model. */
export type SidesRecord = {
  zones: ZoneDeskHours[];
  counts: SideCount[];
  /** Codes of zones without desks or zone air: nothing can be expected of them. */
  without: string[];
  /** Person-days used; reports left out: outside the record, without zone air at the time, or of zones left out. */
  personDays: number;
  /** The least number of people who sent them, of the building and of each zone with any. */
  people: number;
  peopleByZone: (readonly [zoneId: number, people: number])[];
  leftOut: number;
  /** First moment from which hours count [UTC s], and days of the record that stand for a year; null without a record. */
  fromUtcSeconds: number;
  yearDays: number;
} | null;

export const SIDES: ResultKind<SidesRecord> = {
  name: "both-sides",
  version: 4,
  inputs: ["trends", "mapping", "zones", "reports", "building", "assumptions"],
  workOut: sidesRecord,
};

/** Works out anew what a building's reports and hours say of both sides. */
export async function sidesRecord(ctx: Context, building: BuildingRow): Promise<SidesRecord> {
  const record = await buildingRecord(ctx, building);
  if (!record) return null;
  const thresholdC = seasonThresholdC(ctx, building.id);
  const all = listComfortReports(ctx.db, building.id).toReversed();
  const inRecord = all.filter(
    ({ reportedAtMs }) => reportedAtMs / 1000 >= record.fromUtcSeconds && reportedAtMs / 1000 < record.toUtcSeconds,
  );
  const firstReportSeconds = inRecord[0] ? Math.floor(inRecord[0].reportedAtMs / 1000) : record.toUtcSeconds;
  const { zones, without } = await deskHoursByZone(ctx, building, record, { firstReportSeconds, thresholdC });
  const known = new Set(zones.map(({ zoneId }) => zoneId));
  const air = await airAtReports(ctx, building.id, inRecord, thresholdC);
  const table = zoneTable(building.timeZone);
  const offsetMsAt = (atMs: number): number => table.offsetAt(Math.floor(atMs / 1000)) * 1000;
  const seen = new Set<string>();
  const desks = new Map<number, (number | null)[]>();
  const counts = new Map<string, SideCount>();
  let leftOut = all.length - inRecord.length;
  for (const [i, report] of inRecord.entries()) {
    const airTempC = air[i]?.zoneAirTempC ?? null;
    if (airTempC === null || !known.has(report.zoneId)) {
      leftOut++;
      continue;
    }
    if (report.preference === "no-change") continue;
    // One person who writes five times on a day is one; who wants it warmer and later cooler counts on both sides.
    const day = `${report.preference}/${personDayKey(report, offsetMsAt)}`;
    if (seen.has(day)) continue;
    seen.add(day);
    const ofZone = desks.get(report.zoneId);
    if (ofZone) ofZone.push(report.deskId);
    else desks.set(report.zoneId, [report.deskId]);
    const season: VoteSeason = air[i]?.inCoolingSeason ? "summer" : "winter";
    const bin = Math.round(airTempC);
    const key = `${report.zoneId}/${season}/${bin}`;
    const count = counts.get(key) ?? { zoneId: report.zoneId, season, airTempC: bin, tooCold: 0, tooWarm: 0 };
    if (report.preference === "warmer") count.tooCold++;
    else count.tooWarm++;
    counts.set(key, count);
  }
  return {
    zones,
    counts: [...counts.values()],
    without,
    personDays: seen.size,
    people: leastPeople([...desks.values()].flat()),
    peopleByZone: [...desks].map(([zoneId, ofZone]) => [zoneId, leastPeople(ofZone)] as const),
    leftOut,
    fromUtcSeconds: firstReportSeconds,
    yearDays: Math.min(365, Math.round((record.toUtcSeconds - record.fromUtcSeconds) / 86_400)),
  };
}
