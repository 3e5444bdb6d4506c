import { createHash } from "node:crypto";
import { inTransaction } from "@/db/client";
import { findReportBySubmission, insertComfortReport } from "@/db/queries/comfort";
import {
  type ComplaintReadingRule,
  type ComplaintRow,
  readComplaints,
} from "@/lib/importers/complaints/read-complaints";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { zoneTable } from "@/lib/time/zone-table";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { placeByCode } from "./log";
import { NOTE_LENGTH } from "./report-input";

/** What becomes of a row, and why. */
export type PastReportFate = ComplaintRow & {
  fate: "accepted" | "repaired" | "rejected" | "ignored";
  reason: string;
};

export type PastReports =
  | { status: "refused"; message: string; headings: readonly string[] }
  | (Omit<Extract<ReturnType<typeof readComplaints>, { status: "ok" }>, "rows"> & { rows: PastReportFate[] });

/** A complaint says no vote: it stands for "cool" or "warm" with the wish for the contrary. Judgement, no source. */
const STANDS_FOR = {
  cold: { thermalSensation: -2, preference: "warmer" },
  hot: { thermalSensation: 2, preference: "cooler" },
} as const;
const NOON = 12 * 60;

type Ready = { fate: PastReportFate; row?: Parameters<typeof insertComfortReport>[1] };

/** Says what would become of each row of a table of past complaints; nothing is stored. */
export function previewPastReports(
  ctx: Context,
  buildingId: number,
  text: string,
  rule: ComplaintReadingRule,
): PastReports {
  const read = judge(ctx, buildingId, text, rule);
  return "ready" in read ? { ...read.table, rows: read.ready.map(({ fate }) => fate) } : read;
}

/** Takes a table of past complaints in. A row that is here already is ignored, so a file can be taken again. */
export function takePastReports(
  ctx: Context,
  buildingId: number,
  text: string,
  rule: ComplaintReadingRule,
): PastReports {
  const read = judge(ctx, buildingId, text, rule);
  if (!("ready" in read)) return read;
  inTransaction(ctx.db, (tx) => {
    for (const { row } of read.ready) if (row) insertComfortReport(tx, row);
  });
  return { ...read.table, rows: read.ready.map(({ fate }) => fate) };
}

function judge(ctx: Context, buildingId: number, text: string, rule: ComplaintReadingRule) {
  const actor = requireFacilities(ctx);
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const read = readComplaints(text, rule);
  if (read.status === "refused") return read;
  const { rows, ...table } = read;
  const seen = new Set<string>();
  const ready = rows.map((row): Ready => {
    const no = (fate: "rejected" | "ignored", reason: string): Ready => ({ fate: { ...row, fate, reason } });
    if (row.status === "rejected") return no("rejected", row.why);
    if (row.kind === "other")
      return no(
        "ignored",
        row.matched.length > 0
          ? `words of both kinds (${row.matched.join(", ")}): set what it is about`
          : "no word of the list: set what it is about, or leave it out",
      );
    const place = placeOrReason(ctx, buildingId, row);
    if (typeof place === "string") return no("rejected", place);
    const reportedAtMs = instantOf(row.date, row.minute ?? NOON, timeZone);
    if (reportedAtMs > ctx.now) return no("rejected", "it lies ahead of now");
    const submissionId = `import/${hashOf([buildingId, reportedAtMs, place.zoneId, place.deskId, row.text])}`;
    if (seen.has(submissionId)) return no("ignored", "the same row stands above");
    seen.add(submissionId);
    if (findReportBySubmission(ctx.db, submissionId)) return no("ignored", "it is here already");
    const note = row.text.slice(0, NOTE_LENGTH);
    const repairs = [
      row.minute === null ? "no time: noon was taken" : "",
      note.length < row.text.length ? `cut to ${NOTE_LENGTH} characters` : "",
    ].filter(Boolean);
    const fate = repairs.length > 0 ? "repaired" : "accepted";
    return {
      fate: { ...row, fate, reason: repairs.join("; ") },
      row: {
        ...STANDS_FOR[row.kind],
        ...place,
        buildingId,
        reportedAtMs,
        note,
        submissionId,
        origin: "import",
        enteredBy: actorName(actor),
        state: "closed",
        closedAtMs: null,
      },
    };
  });
  return { table, ready };
}

function placeOrReason(ctx: Context, buildingId: number, row: ComplaintRow) {
  try {
    return placeByCode(ctx, buildingId, row);
  } catch (error) {
    if (error instanceof ServiceError) return error.message;
    throw error;
  }
}

/** A local date and minute as epoch milliseconds; of a repeated hour the first, a skipped one as the clock then showed. */
function instantOf(date: string, minute: number, timeZone: string): number {
  const day = dayNumberFromLocalDate(date);
  if (day === null) throw new RangeError(`${date} is no date`);
  const local = zoneTable(timeZone).utcFromLocal(day * 86_400 + minute * 60);
  if (local.status === "unique") return local.utcSeconds * 1000;
  return (local.status === "repeated" ? local.firstUtcSeconds : local.shiftedUtcSeconds) * 1000;
}

const hashOf = (parts: readonly unknown[]): string =>
  createHash("sha256").update(JSON.stringify(parts)).digest("base64url").slice(0, 32);
