import type { Finding } from "@/lib/findings/finding";
import { TREND_FINDING_SEVERITY, type TrendFinding, type TrendFindingCode } from "./trend-file";

type Facts = Omit<TrendFinding, "code" | "severity" | "sentence">;

/** A finding with its severity and its sentence. */
export function makeFinding(code: TrendFindingCode, facts: Facts = {}): TrendFinding {
  return { code, severity: TREND_FINDING_SEVERITY[code], sentence: SENTENCES[code](facts), ...facts };
}

/** The same for the parts of the product that know findings in general only. */
export function asFinding({ code, severity, sentence: _sentence, ...facts }: TrendFinding): Finding<TrendFindingCode> {
  const evidence: Finding["evidence"] = {};
  for (const [key, value] of Object.entries(facts)) if (value !== undefined) evidence[key] = value;
  return { code, severity, evidence };
}

const counted = (count: number | undefined, one: string, many = `${one}s`): string =>
  `${(count ?? 0).toLocaleString("en-US")} ${count === 1 ? one : many}`;

function onLines({ lines, count }: Facts): string {
  if (!Array.isArray(lines) || lines.length === 0) return "";
  const shown = lines.slice(0, 5);
  const more = (count ?? lines.length) > shown.length ? " and others" : "";
  return ` (${lines.length === 1 ? "line" : "lines"} ${shown.join(", ")}${more})`;
}

const at = ({ point, points }: Facts): string =>
  point
    ? ` at ${point}`
    : points && points.length > 0
      ? ` at ${points.length} points (${points.slice(0, 3).join(", ")}${points.length > 3 ? ", ..." : ""})`
      : "";

const numberOfLines = (lines: Facts["lines"]): number => (typeof lines === "number" ? lines : (lines?.length ?? 0));

const SENTENCES: Record<TrendFindingCode, (facts: Facts) => string> = {
  "preamble-skipped": (f) =>
    `${counted(numberOfLines(f.lines), "line")} of report text above the heading ${numberOfLines(f.lines) === 1 ? "was" : "were"} passed over.`,
  "trailing-rows-ignored": (f) =>
    `${counted(numberOfLines(f.lines), "row")} of totals or end marks below the readings ${numberOfLines(f.lines) === 1 ? "was" : "were"} left out.`,
  "encoding-converted": (f) =>
    `The file is written in ${f.encoding}; it was converted. Check that names with accents and degree signs look right.`,
  "date-order-inferred": (f) =>
    `Day and month were told apart by ${f.evidence}. Check the first and last date before importing.`,
  "unit-from-values": (f) => `The unit${at(f)} was taken from the values, since the heading has none.`,
  "rows-sorted": () => "Rows did not run from oldest to newest; they were put in order of time.",
  "name-from-file": (f) =>
    `${counted(f.count, "point")} ${f.count === 1 ? "takes its name" : "take their names"} from the file name, since the heading says only "value". Rename the point if that is not its name.`,
  "repeated-hour-resolved": (f) =>
    `${counted(f.count, "row")} in the hour that is repeated when clocks go back ${f.count === 1 ? "was" : "were"} told apart by order: daylight time first, then standard time.`,
  "duplicate-identical": (f) =>
    f.evidence
      ? `${counted(f.count, "reading")} ${f.count === 1 ? "is" : "are"} given again ${f.evidence} and ${f.count === 1 ? "was" : "were"} counted once.`
      : `${counted(f.count, "row")} repeating an earlier time and value ${f.count === 1 ? "was" : "were"} counted once${onLines(f)}.`,
  "status-flagged": (f) =>
    `${counted(f.count, "reading")}${at(f)} in alarm, overridden or flagged ${f.count === 1 ? "is" : "are"} kept${onLines(f)}. Overridden values may not show normal operation.`,
  "change-of-value": (f) =>
    `Logged on change of value${at(f)}: each value holds until the next, and averages are weighted by time.`,
  "event-row": (f) =>
    `${counted(f.count, "row")} about the log itself (switched off or on, clock set) ${f.count === 1 ? "is" : "are"} not readings${onLines(f)}; they may explain gaps.`,
  "interval-statistics": () => "Each row sums up an interval; one of its columns is taken as the value.",
  "value-missing": (f) =>
    `${counted(f.count, "value")} missing${at(f)}${onLines(f)}. They are left out, not taken as zero; check whether the point was being logged.`,
  "status-bad": (f) =>
    `${counted(f.count, "value")} with a bad status${at(f)} left out${onLines(f)}. Check the sensor or the connection at those times.`,
  "sentinel-value": (f) =>
    `${counted(f.count, "value")}${at(f)} ${f.count === 1 ? "is a number" : "are numbers"} that stand${f.count === 1 ? "s" : ""} for "no value"${f.evidence ? ` (${f.evidence})` : ""} and ${f.count === 1 ? "was" : "were"} left out${onLines(f)}. Check whether a sensor is connected.`,
  "implausible-value": (f) =>
    `${counted(f.count, "value")}${at(f)} ${f.count === 1 ? "is" : "are"} outside what can be${f.evidence ? ` (${f.evidence})` : ""} and ${f.count === 1 ? "was" : "were"} left out${onLines(f)}. Check the sensor, and the unit of the point.`,
  "ambiguous-local-time": (f) =>
    `${counted(f.count, "row")} in the hour that is repeated when clocks go back ${f.count === 1 ? "is" : "are"} there only once and could be either${onLines(f)}. Held back; export with the offset from UTC to have them.`,
  "nonexistent-local-time": (f) =>
    `${counted(f.count, "row")} ${f.count === 1 ? "has a time" : "have times"} that the clocks skip in spring${onLines(f)}. Most likely the system keeps standard time all year: then every later time is an hour off. Say how its clock runs.`,
  "date-order-unknown": () =>
    "Nothing in the file tells the day from the month in its dates. Say which comes first; nothing is stored until then.",
  "time-start-unknown": () =>
    "Its times are seconds since a start that the file does not say. Say when they began; nothing is stored until then.",
  "unit-unknown": (f) =>
    `${counted(f.count, "point")} ${f.count === 1 ? "has" : "have"} no unit in the file. Confirm the unit before importing.`,
  "duplicate-conflicting": (f) =>
    f.evidence
      ? `${counted(f.count, "reading")} ${f.count === 1 ? "is" : "are"} given again ${f.evidence} with another value; the later one was kept. Check which one is right.`
      : `${counted(f.count, "time")} appear${f.count === 1 ? "s" : ""} twice with different values${onLines(f)}; the later row was kept. Check which one is right.`,
  "repeated-name": (f) =>
    `${counted(f.count, "name")} ${f.count === 1 ? "stands" : "stand"} over more than one column; the points were told apart by column number. Say which zone each belongs to.`,
  "row-unreadable": (f) =>
    `${counted(f.count, "row")} could not be read and ${f.count === 1 ? "was" : "were"} left out${onLines(f)}.${f.evidence ? ` ${f.evidence}` : ""}`,
  gap: (f) =>
    f.fromUtc
      ? `No rows${at(f)} between ${f.fromUtc} and ${f.toUtc}: ${counted(f.missing, "row")} missing. Check whether the log was off; the time counts as without data.`
      : `${counted(f.count, "more gap")}${at(f)}, ${counted(f.missing, "row")} missing in all.`,
  "no-readings": (f) =>
    `${f.file ?? f.point ?? "A point"} has no readings. Check that the point is logged and the dates asked for in the export.`,
  "file-refused": (f) => `${f.file ?? "A file"} was not taken in. ${f.evidence ?? ""}`.trim(),
};
