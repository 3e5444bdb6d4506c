import { zoneTable } from "@/lib/time/zone-table";
import { ByteWriter } from "./byte-writer";
import { MISSING, OfficeTrends, POINTS, pointNames, START_UTC_SECONDS, STEP_SECONDS, TIME_ZONE } from "./office-trends";

export type TrendFileShape = {
  layout: "wide" | "long";
  zones: number;
  /** Days of the record that the file holds, counted from its first. */
  fromDay: number;
  toDay: number;
  /** Local time as a wall clock shows it, repeated hour and all, or with its offset from UTC behind it. */
  stamps?: "local" | "offset";
  /** Fields alone; all of them in quotes; or, of a long file, with the unit in a column of its own and a status behind it. */
  fields?: "bare" | "quoted" | "unit-and-status";
  seed?: number;
};

export type WrittenFile = { file: string; bytes: number; rows: number; readings: number };

const COMMA = 44;
const NEW_LINE = 10;
const QUOTE = 34;
const IS_TENTHS = POINTS.map((point) => point.includes("°"));

/** The year that most benches are about: 60 zones, three points each, every quarter hour. */
export const TYPICAL = { zones: 60, fromDay: 0, toDay: 365 } as const;

/** Writes a trend export row by row; memory does not grow with the file. */
export function writeTrendFile(file: string, shape: TrendFileShape): WrittenFile {
  const { layout, zones, fromDay, toDay, stamps = "local", fields = "bare", seed = 1 } = shape;
  const out = new ByteWriter(file);
  const names = pointNames(zones);
  const isQuoted = fields === "quoted";
  const fieldOf = (text: string): string => (isQuoted ? `"${text}"` : text);
  const longFields = fields === "unit-and-status" ? dressed(names) : names.map((name) => ({ name: fieldOf(name), behind: "" }));
  const headings = layout === "wide" ? names : ["Point Name", "Value", ...(fields === "unit-and-status" ? ["Unit", "Status"] : [])];
  out.text(fieldOf("Timestamp"));
  for (const heading of headings) out.text(`,${fieldOf(heading)}`);
  out.byte(NEW_LINE);
  const office = new OfficeTrends(zones, seed);
  const clock = zoneTable(TIME_ZONE);
  const written = { file, bytes: 0, rows: 0, readings: 0 };
  const [firstLocal, lastLocal] = [fromDay, toDay].map((day) => clock.localFromUtc(START_UTC_SECONDS) + day * 86_400);
  for (let utc = START_UTC_SECONDS; ; utc += STEP_SECONDS) {
    const local = clock.localFromUtc(utc);
    if (local >= (lastLocal as number)) break;
    office.next((local % 86_400) / 3600);
    if (office.silent || local < (firstLocal as number)) continue;
    const stamp = fieldOf(stampOf(local, stamps === "offset" ? local - utc : null));
    const row = { stamp, values: office.values, isQuoted };
    if (layout === "wide") writeWideRow(out, row, written);
    else writeLongRows(out, row, longFields, written);
  }
  out.close();
  return { ...written, bytes: out.bytes };
}

/** Names without their units, and the fields behind each value. */
const dressed = (names: readonly string[]): LongField[] =>
  names.map((full) => {
    const [name = full, unit = ""] = full.split(/ \((.*)\)$/);
    return { name, behind: `,${unit},{ok}` };
  });

type Row = { stamp: string; values: Int32Array; isQuoted: boolean };
type LongField = { name: string; behind: string };

function writeWideRow(out: ByteWriter, { stamp, values, isQuoted }: Row, written: WrittenFile): void {
  out.text(stamp);
  for (let point = 0; point < values.length; point++) {
    out.byte(COMMA);
    const value = values[point] as number;
    if (isQuoted) out.byte(QUOTE);
    if (value !== MISSING) {
      out.number(value, IS_TENTHS[point % POINTS.length] as boolean);
      written.readings++;
    }
    if (isQuoted) out.byte(QUOTE);
  }
  out.byte(NEW_LINE);
  written.rows++;
}

function writeLongRows(
  out: ByteWriter,
  { stamp, values, isQuoted }: Row,
  fields: readonly LongField[],
  written: WrittenFile,
): void {
  for (let point = 0; point < values.length; point++) {
    const value = values[point] as number;
    if (value === MISSING) continue;
    const { name, behind } = fields[point] as LongField;
    out.text(stamp);
    out.byte(COMMA);
    out.text(name);
    out.byte(COMMA);
    if (isQuoted) out.byte(QUOTE);
    out.number(value, IS_TENTHS[point % POINTS.length] as boolean);
    if (isQuoted) out.byte(QUOTE);
    out.text(behind);
    out.byte(NEW_LINE);
    written.readings++;
    written.rows++;
  }
}

/** `2025-03-09 03:15:00`, or with `-05:00` behind it. */
function stampOf(localSeconds: number, offsetSeconds: number | null): string {
  const stamp = new Date(localSeconds * 1000).toISOString().slice(0, 19).replace("T", " ");
  if (offsetSeconds === null) return stamp;
  const minutes = Math.abs(offsetSeconds) / 60;
  const two = (n: number) => String(Math.floor(n)).padStart(2, "0");
  return `${stamp}${offsetSeconds < 0 ? "-" : "+"}${two(minutes / 60)}:${two(minutes % 60)}`;
}
