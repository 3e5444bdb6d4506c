import { and, asc, count, desc, eq, gte, inArray, isNotNull, ne, type SQL } from "drizzle-orm";
import type { ReportState } from "@/lib/comfort-reports/report-state";
import type { Queryable } from "../client";
import { comfortReport } from "../schema/comfort";
import type { ComfortReportRow } from "./comfort";

export type InboxFilter = { states: readonly ReportState[] | null; zoneId: number | null };

function matching(buildingId: number, { states, zoneId }: InboxFilter): SQL | undefined {
  return and(
    eq(comfortReport.buildingId, buildingId),
    states ? inArray(comfortReport.state, [...states]) : undefined,
    zoneId === null ? undefined : eq(comfortReport.zoneId, zoneId),
  );
}

export function countInbox(db: Queryable, buildingId: number, filter: InboxFilter): number {
  return db.select({ n: count() }).from(comfortReport).where(matching(buildingId, filter)).get()?.n ?? 0;
}

/** One page of the inbox, newest first. */
export function listInbox(
  db: Queryable,
  buildingId: number,
  filter: InboxFilter,
  { limit, offset }: { limit: number; offset: number },
): ComfortReportRow[] {
  return db
    .select()
    .from(comfortReport)
    .where(matching(buildingId, filter))
    .orderBy(desc(comfortReport.reportedAtMs), desc(comfortReport.id))
    .limit(limit)
    .offset(offset)
    .all();
}

/** Of all reports that somebody still has to see to, what their zones are summed up from; oldest first. */
export function listOpenVotes(db: Queryable, buildingId: number, states: readonly ReportState[]) {
  const { id, zoneId, deskId, linkId, reportedAtMs, thermalSensation, preference, personDay } = comfortReport;
  return db
    .select({ id, zoneId, deskId, linkId, reportedAtMs, thermalSensation, preference, personDay })
    .from(comfortReport)
    .where(and(eq(comfortReport.buildingId, buildingId), inArray(comfortReport.state, [...states])))
    .orderBy(asc(comfortReport.reportedAtMs))
    .all();
}

/** How long answers took since a moment [ms], with the desk; reports of past tables, which nobody waits for, are left out. */
export function listAnswerTimes(
  db: Queryable,
  buildingId: number,
  sinceMs: number,
): { tookMs: number; deskId: number | null }[] {
  const { reportedAtMs: at, answeredAtMs: answered, deskId } = comfortReport;
  return db
    .select({ at, answered, deskId })
    .from(comfortReport)
    .where(
      and(
        eq(comfortReport.buildingId, buildingId),
        gte(comfortReport.reportedAtMs, sinceMs),
        isNotNull(comfortReport.answeredAtMs),
        ne(comfortReport.origin, "import"),
      ),
    )
    .all()
    .map((row) => ({ tookMs: (row.answered ?? row.at) - row.at, deskId: row.deskId }));
}

/** Reports since a moment, answered or not, without those of past tables. */
export function countToAnswer(db: Queryable, buildingId: number, sinceMs: number): number {
  const where = and(
    eq(comfortReport.buildingId, buildingId),
    gte(comfortReport.reportedAtMs, sinceMs),
    ne(comfortReport.origin, "import"),
  );
  return db.select({ n: count() }).from(comfortReport).where(where).get()?.n ?? 0;
}
