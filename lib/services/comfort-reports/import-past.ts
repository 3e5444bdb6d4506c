import { createHash } from "node:crypto";
import { inTransaction } from "@/db/client";
import { findReportBySubmission, insertComfortReport } from "@/db/queries/comfort";
import { COMPLAINT_WORDS, type ComplaintWords } from "@/lib/importers/complaints/complaint-words";
import {
  type ComplaintReadingRule,
  type ComplaintRow,
  readComplaints,
} from "@/lib/importers/complaints/read-complaints";
import { decodeText } from "@/lib/importers/tables/decode-text";
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

/** The list that texts are read by unless another is given. */
export const usualComplaintWords = (): ComplaintWords => COMPLAINT_WORDS;

/** A table of past complaints, as the bytes of a file or as text, and how to read it; what is left open is proposed. */
export type PastReportsTable = {
  file: Uint8Array | string;
  rule: Omit<ComplaintReadingRule, "words"> & Partial<Pick<ComplaintReadingRule, "words">>;
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
export function previewPastReports(ctx: Context, buildingId: number, table: PastReportsTable): PastReports {
  const read = judge(ctx, buildingId, table);
  return "ready" in read ? { ...read.table, rows: read.ready.map(({ fate }) => fate) } : read;
}

/** Takes a table of past complaints in. A row that is here already is ignored, so a file can be taken again. */
export function takePastReports(ctx: Context, buildingId: number, table: PastReportsTable): PastReports {
  const read = judge(ctx, buildingId, table);
  if (!("ready" in read)) return read;
  inTransaction(ctx.db, (tx) => {
    for (const { row } of read.ready) if (row) insertComfortReport(tx, row);
  });
  return { ...read.table, rows: read.ready.map(({ fate }) => fate) };
}

function judge(ctx: Context, buildingId: number, { file, rule }: PastReportsTable) {
  const actor = requireFacilities(ctx);
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const text = textOfTable(file);
  const read = readComplaints(text, { words: COMPLAINT_WORDS, ...rule });
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

/** Text of a table; refuses bytes that are no text. */
export function textOfTable(file: Uint8Array | string): string {
  if (typeof file === "string") return file;
  const decoded = decodeText(file);
  if (decoded.status !== "ok") throw new ServiceError("invalid", decoded.message, { file: decoded.message });
  return decoded.text;
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
