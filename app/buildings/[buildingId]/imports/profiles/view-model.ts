import type { ListedProfile } from "@/lib/services/mapping-profiles/manage";
import { formatLocal } from "@/lib/time/format";
import { KIND_LABEL, unitWord } from "../mapping/kind-words";

const DATE_WORDS: Record<string, string> = {
  mdy: "month first",
  dmy: "day first",
  ymd: "year first",
  epoch: "seconds since 1970",
  elapsed: "seconds since a start",
  serial: "spreadsheet day numbers",
};
const CLOCK_WORDS = { "standard-time-all-year": "standard time all year", "local-time": "local time" };
const LAYOUT_WORDS: Record<string, string> = {
  wide: "one column a point",
  long: "one row a reading",
  "one-point": "one point a file",
  pairs: "a time column a point",
  stacked: "sections under each other",
  zip: "a zip of files",
};

/** What a profile answers of a file's questions and expects of its shape, in one line. */
export function shapeWords({ content: { shape, answers } }: Pick<ListedProfile, "content">): string {
  const dates = shape.dateFormat ?? answers.dateOrder ?? null;
  const parts = [LAYOUT_WORDS[shape.layout ?? ""] ?? shape.layout ?? "any layout"];
  if (dates) parts.push(`dates ${DATE_WORDS[dates] ?? dates}`);
  if (answers.clock) parts.push(CLOCK_WORDS[answers.clock]);
  if (answers.valueColumn) parts.push(`value from ${answers.valueColumn}`);
  if (answers.flagColumn) parts.push(`good flags ${answers.flagColumn.good.join(", ")}`);
  return parts.join("; ");
}

export type ProfilePointRow = { name: string; is: string; zone: string; unit: string };

/** The points of a profile with what becomes of each. */
export function profilePoints(
  { content: { points } }: Pick<ListedProfile, "content">,
  zones: ReadonlyMap<number, string>,
): ProfilePointRow[] {
  return Object.entries(points).map(([name, { choice, unitAsWritten }]) => ({
    name,
    is: choice.skip ? (choice.undecided ? "asked about each time" : "left out") : KIND_LABEL[choice.kind],
    zone: choice.skip || choice.zoneId === null ? "" : (zones.get(choice.zoneId) ?? "a zone that is gone"),
    unit: unitAsWritten ?? (!choice.skip && choice.unit ? `${unitWord(choice.unit)}, as answered` : ""),
  }));
}

/** How many points are imported and how many left out. */
export function countWords({ content: { points } }: Pick<ListedProfile, "content">): string {
  const all = Object.values(points);
  const out = all.filter(({ choice }) => choice.skip).length;
  return out === 0 ? `${all.length}` : `${all.length - out}, and ${out} left out`;
}

export function versionWords(
  { version, fileName, madeAtMs, madeBy }: Pick<ListedProfile, "version" | "fileName" | "madeAtMs" | "madeBy">,
  timeZone: string,
): string {
  return `Version ${version}, from ${fileName}, ${formatLocal(madeAtMs, timeZone, "date-time")} by ${madeBy}`;
}
