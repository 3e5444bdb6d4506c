import type { LocalDate } from "@/lib/time/civil-date";
import { billDay, type DateOrder, dateOf, dateOrderOf } from "../tables/bill-dates";
import { splitTable, type TableRecord } from "../tables/split-table";
import { type ComplaintColumns, type ComplaintField, proposeColumns } from "./complaint-columns";
import { type ComplaintKind, type ComplaintWords, readComplaint } from "./complaint-words";

/** How a table of complaints is to be read; what is left open is proposed. */
export type ComplaintReadingRule = {
  columns?: ComplaintColumns;
  dateOrder?: DateOrder | null;
  words: ComplaintWords;
  /** Kinds that a person has set, by line. */
  kinds?: Readonly<Record<number, ComplaintKind>>;
};

export type ComplaintRow = {
  line: number;
  text: string;
  zoneCode: string;
  deskCode: string;
  kind: ComplaintKind;
  /** Words of the list that were found; empty where a person has set the kind. */
  matched: string[];
} & ({ status: "read"; date: LocalDate; minute: number | null } | { status: "rejected"; why: string });

export type ComplaintTable =
  | {
      status: "ok";
      headings: readonly string[];
      columns: ComplaintColumns;
      dateOrder: DateOrder | null;
      rows: ComplaintRow[];
    }
  | { status: "refused"; message: string; headings: readonly string[] };

const DELIMITERS = [",", ";", "\t", "|"] as const;

/** Reads a table of past complaints: first line the headings, one complaint a row. */
export function readComplaints(text: string, rule: ComplaintReadingRule): ComplaintTable {
  const splits = DELIMITERS.map((delimiter) => splitTable(text, delimiter));
  const best = splits.reduce((a, b) => (widthOf(b.records) > widthOf(a.records) ? b : a));
  const [heading, ...records] = best.records;
  const headings = heading?.cells ?? [];
  const refuse = (message: string): ComplaintTable => ({ status: "refused", message, headings });
  if (best.openQuoteLine !== null)
    return refuse(
      `A quotation mark in the row of line ${best.openQuoteLine} is never closed. Close it or take it out.`,
    );
  if (records.length === 0) return refuse("The table has no rows under its headings.");
  const columns = { ...proposeColumns(headings), ...rule.columns };
  const cellOf = (record: TableRecord, field: ComplaintField): string => {
    const at = columns[field];
    return at === null || at === undefined ? "" : (record.cells[at] ?? "");
  };
  const missing = (["date", "text"] as const).filter((field) => (columns[field] ?? null) === null);
  if ((columns.zone ?? null) === null && (columns.desk ?? null) === null) missing.push("zone" as never);
  if (missing.length > 0)
    return refuse(`Say which column holds the ${missing.join(", the ")}: the headings do not tell.`);
  const filled = records.filter(({ cells }) => cells.some((cell) => cell !== ""));
  const stamps = filled.map((record) => splitStamp(cellOf(record, "date"), cellOf(record, "time")));
  const dateOrder = rule.dateOrder ?? dateOrderOf(stamps.map(({ date }) => date));
  const rows = filled.map((record, i): ComplaintRow => {
    const words = cellOf(record, "text");
    const set = rule.kinds?.[record.line];
    const reading = set ? { kind: set, matched: [] } : readComplaint(words, rule.words);
    const about = {
      line: record.line,
      text: words,
      zoneCode: cellOf(record, "zone"),
      deskCode: cellOf(record, "desk"),
    };
    return { ...about, ...reading, ...momentOf(stamps[i] ?? { date: "", time: "" }, dateOrder) };
  });
  return { status: "ok", headings, columns, dateOrder, rows };
}

const widthOf = (records: readonly TableRecord[]): number => records[0]?.cells.length ?? 0;

/** A date with a time in one cell is taken apart. */
function splitStamp(date: string, time: string): { date: string; time: string } {
  const [day = "", ...rest] = date.split(/[T ]+/);
  return { date: day, time: time || rest.join(" ") };
}

function momentOf(
  { date, time }: { date: string; time: string },
  order: DateOrder | null,
): { status: "read"; date: LocalDate; minute: number | null } | { status: "rejected"; why: string } {
  if (date === "") return { status: "rejected", why: "the date is blank" };
  const day = billDay(date, order);
  if ("fault" in day) return { status: "rejected", why: day.fault };
  const minute = minuteOf(time);
  if (minute === "no-time") return { status: "rejected", why: `"${time}" is no time of day; write it as 14:30` };
  return { status: "read", date: dateOf(day.day), minute };
}

/** Minutes after midnight of `14:30`, `14:30:05` or `2:30 pm`; null for a blank. */
function minuteOf(time: string): number | null | "no-time" {
  if (time === "") return null;
  const match = /^(\d{1,2}):(\d{2})(?::\d{2}(?:\.\d+)?)?(?: ?([ap])\.?m\.?)?$/i.exec(time);
  const [hour, minute, half] = [Number(match?.[1]), Number(match?.[2]), match?.[3]?.toLowerCase()];
  if (!match || minute > 59 || hour > (half ? 12 : 23) || (half !== undefined && hour < 1)) return "no-time";
  return (half ? (hour % 12) + (half === "p" ? 12 : 0) : hour) * 60 + minute;
}
