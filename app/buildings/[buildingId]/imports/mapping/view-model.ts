import type { StatedLine } from "@/lib/services/trend-imports/mapping";
import { isSettled, type LineState, type MappingEntry } from "@/lib/services/trend-imports/mapping-entry";
import { formatLocal } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";
import { UNIT_WORDS, unitWord, WHAT_CHOICES } from "./kind-words";

/** A point as the mapping table shows it, with what stands in its fields to begin with. */
export type MappingRow = {
  name: string;
  /** Position in the form; field names carry it, since a point's name may hold anything. */
  index: number;
  files: string;
  what: string;
  zoneId: string;
  unit: string;
  unitChoices: string[];
  /** Why the unit is proposed; blank when the file says it. */
  unitWhy: string;
  /** Former name offered, and whether it is taken. */
  continues: string | null;
  isContinued: boolean;
  confidence: string;
  why: string;
  holds: string;
  span: string[];
  /** Values for a small line, when there are enough. */
  spark: number[];
  open: boolean;
};

type RowContext = { timeZone: string; fileNames: ReadonlyMap<number, string> };

export function mappingRow(line: StatedLine, index: number, { timeZone, fileNames }: RowContext): MappingRow {
  const { summary, unitAsk, state, continues } = line;
  const { what, zoneId, unit } = state.entry;
  return {
    name: line.name,
    index,
    // With one file alone, the page says which it is.
    files: fileNames.size > 1 ? fileWords(line.runIds.map((id) => fileNames.get(id) ?? `import ${id}`)) : "",
    what,
    zoneId: zoneId === null ? "" : String(zoneId),
    unit: unitAsk ? (unit ?? "") : (summary.unitAsWritten ?? ""),
    unitChoices: unitAsk?.choices ?? [],
    unitWhy: unitAsk ? unitReason(line) : "",
    continues,
    isContinued: state.entry.continues !== null,
    confidence: confidenceWord(line),
    why: whyWords(line),
    holds: holdsWords(line),
    span: spanWords(line, timeZone),
    spark: sparkValues(line),
    open: !isSettled(state),
  };
}

const fileWords = ([first = "", ...more]: readonly string[]): string =>
  more.length === 0 ? first : `${first} and ${more.length} more`;

function confidenceWord({ state, proposal }: StatedLine): string {
  const words: Record<LineState["origin"], string> = {
    entered: "entered",
    profile: "profile",
    "profile-differs": "changed",
    known: "before",
    "left-out-before": "before",
    proposal: proposal.confidence,
    open: "asked",
  };
  return words[state.origin];
}

function whyWords({ state, proposal, differs }: StatedLine): string {
  if (differs) return differs;
  switch (state.origin) {
    case "entered":
      return "as entered here, not confirmed yet";
    case "profile":
      return "as the profile says";
    case "known":
      return "as mapped before";
    case "left-out-before":
      return "left out before";
    default:
      return proposal.reason;
  }
}

function unitReason({ unitAsk, state, known, summary }: StatedLine): string {
  if (state.origin === "profile") return "as the profile says";
  if (known && unitAsk?.choices.includes(known.fileUnit)) return "as before";
  if (!unitAsk?.proposal) return "the file does not say it";
  const mean = meanOf(summary);
  return mean === null ? "by the values" : `by the values, around ${shownValue(mean)}`;
}

/** Readings and their mean, as far as the inspection has them. */
function holdsWords({ summary }: StatedLine): string {
  const { readings, missing, states } = summary;
  const count = `${formatNumber(readings, { decimals: 0 })} ${readings === 1 ? "reading" : "readings"}`;
  const mean = meanOf(summary);
  const parts = [count];
  if (mean !== null) parts.push(`mean ${shownValue(mean)}${unitAfter(summary)}`);
  if (states && states.length > 0)
    parts.push(`states ${states.slice(0, 4).join(", ")}${states.length > 4 ? " …" : ""}`);
  if (missing > 0) parts.push(`${formatNumber(missing, { decimals: 0 })} missing`);
  return parts.join(", ");
}

/** First and last reading with their local times. */
function spanWords({ summary }: StatedLine, timeZone: string): string[] {
  const { firstUtc, lastUtc, first, last } = summary;
  const at = (utc: string, value: number | string | null): string =>
    `${formatLocal(Date.parse(utc), timeZone, "date-time")}: ${shownValue(value)}${unitAfter(summary)}`;
  if (firstUtc && lastUtc)
    return firstUtc === lastUtc ? [at(firstUtc, first)] : [at(firstUtc, first), at(lastUtc, last)];
  return summary.readings > 0 ? ["times not known yet"] : [];
}

function sparkValues({ summary: { first, spot, last } }: StatedLine): number[] {
  const values = [first, ...(spot ?? []).map((each) => each.value), last];
  const numbers = values.filter((value): value is number => typeof value === "number");
  return numbers.length >= 4 ? numbers : [];
}

const meanOf = ({ sum, readings }: StatedLine["summary"]): number | null =>
  sum === undefined || readings === 0 || !Number.isFinite(sum) ? null : sum / readings;

const shownValue = (value: number | string | null): string =>
  typeof value === "number" ? formatNumber(Number(value.toPrecision(4)), { significantDigits: 4 }) : (value ?? "none");

function unitAfter({ unit, unitAsWritten }: StatedLine["summary"]): string {
  const word = (unit && UNIT_WORDS[unit]) ?? unitAsWritten;
  return word ? `\u00a0${word}` : "";
}

export function mappingLede({
  lines,
  waiting,
}: {
  lines: readonly Pick<StatedLine, "state">[];
  waiting: readonly { fileName?: string }[];
}): string {
  const [{ fileName = "" } = {}] = waiting;
  const files = waiting.length === 1 ? `${fileName} holds` : `${waiting.length} files hold`;
  const points = lines.length === 1 ? "one point" : `${formatNumber(lines.length, { decimals: 0 })} points`;
  const open = lines.filter(({ state }) => !isSettled(state)).length;
  const some = lines.length === 1 ? "not settled yet" : `${formatNumber(open, { decimals: 0 })} of them open`;
  const rest = open === 0 ? "all settled" : some;
  return `${files} ${points}, ${rest}. Check what is proposed; nothing is stored before you confirm.`;
}

/** What a change of many rows sets, in words. */
export function changeWords({ what, zoneId, unit }: Partial<Pick<MappingEntry, "what" | "zoneId" | "unit">>): string {
  const parts: string[] = [];
  if (what !== undefined) parts.push(WHAT_CHOICES.find((each) => each.value === what)?.label ?? what);
  if (zoneId !== undefined) parts.push(zoneId === null ? "no zone" : "a zone");
  if (unit) parts.push(unitWord(unit));
  return `set to ${parts.join(", ")}`;
}
