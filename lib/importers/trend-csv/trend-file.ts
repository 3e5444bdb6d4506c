import type { Severity } from "@/lib/findings/finding";
import type { FileFacts } from "./file-facts";

/** Units that a trend file may state and that are converted; anything else keeps its text and has `unit: null`. */
export const FILE_UNITS = [
  "degF",
  "degC",
  "kelvin",
  "percent",
  "percentRH",
  "W",
  "kW",
  "kWh",
  "cfm",
  "m3PerHour",
  "m3PerSecond",
  "litrePerSecond",
  "ppm",
] as const;
export type FileUnit = (typeof FILE_UNITS)[number];

export const TREND_FINDING_SEVERITY = {
  "preamble-skipped": "note",
  "trailing-rows-ignored": "note",
  "encoding-converted": "note",
  "date-order-inferred": "note",
  "unit-from-values": "note",
  "rows-sorted": "note",
  "name-from-file": "note",
  "repeated-hour-resolved": "note",
  "duplicate-identical": "note",
  "status-flagged": "note",
  "change-of-value": "note",
  "event-row": "note",
  "interval-statistics": "note",
  "value-missing": "caution",
  "status-bad": "caution",
  "sentinel-value": "caution",
  "implausible-value": "caution",
  "ambiguous-local-time": "caution",
  "nonexistent-local-time": "caution",
  "date-order-unknown": "caution",
  "time-start-unknown": "caution",
  "unit-unknown": "caution",
  "duplicate-conflicting": "caution",
  "repeated-name": "caution",
  "row-unreadable": "caution",
  gap: "caution",
  "no-readings": "caution",
  "file-refused": "caution",
} as const satisfies Record<string, Severity>;
export type TrendFindingCode = keyof typeof TREND_FINDING_SEVERITY;

/** What was noticed; keys that do not apply are left out. `lines` is a list of physical lines, or how many there are. */
export type TrendFinding = {
  code: TrendFindingCode;
  severity: Severity;
  /** The finding in words for a facilities manager. */
  sentence: string;
  count?: number;
  point?: string;
  points?: string[];
  lines?: number[] | number;
  evidence?: string;
  fromUtc?: string;
  toUtc?: string;
  missing?: number;
  encoding?: string;
  file?: string;
};

export const REFUSAL_CODES = [
  "empty-file",
  "web-page",
  "workbook",
  "not-text",
  "not-a-trend-export",
  "no-readings",
  "no-dates",
  "dates-destroyed",
  "mixed-date-formats",
  "zone-word-unknown",
  "columns-do-not-match",
  "too-large",
  "broken-zip",
  "no-files-in-zip",
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];
/** Why nothing of the file can be stored, and what to do about it. */
export type TrendRefusal = { code: RefusalCode; sentence: string; lines?: number[] };

/** A question that has to be answered before anything is stored. */
export type TrendAsk = {
  what: "date-order" | "time-start" | "clock" | "unit" | "value-column" | "flag-column";
  /** Empty when anything may be the answer. */
  choices: string[];
  proposal?: string;
  /** Points that a unit question is about. */
  points?: string[];
  /** Heading of the column that a flag question is about. */
  column?: string;
  /** The question in words. */
  question: string;
};

export type DateOrder = "mdy" | "dmy";
export type ClockRule = "standard-time-all-year" | "local-time";

/** Answers given by a person or kept in a mapping profile. */
export type TrendAnswers = {
  dateOrder?: DateOrder;
  /** When the seconds of the file began to be counted, on the building's clock: `2026-01-01T00:00`. */
  timeStart?: string;
  clock?: ClockRule;
  /** Unit of every point whose question offers it: a `FileUnit` or `other`. */
  unit?: string;
  /** Unit by point name; goes before `unit`. */
  units?: Readonly<Record<string, string>>;
  /** Heading of the column that holds the value, of a table of interval statistics. */
  valueColumn?: string;
  /** Which flags of the status column are good. */
  flagColumn?: { good: readonly string[] };
};

export type TrendFileInput = {
  fileName: string;
  bytes: Uint8Array;
  /** IANA zone of the building. */
  timeZone: string;
  /** Only proposes a date order; never decides one. */
  locale?: string;
  answers?: TrendAnswers;
};

export type TrendOutcome = "accept" | "accept-with-findings" | "ask" | "refuse";
export type TrendLayout = "wide" | "long" | "one-point" | "pairs" | "stacked" | "zip";
export type Sampling = "interval" | "change-of-value";

export type TrendDetected = {
  encoding?: string;
  delimiter?: string;
  decimal?: string;
  headerLine?: number | null;
  unitsLine?: number;
  layout?: TrendLayout;
  timeColumns?: number;
  dateOrder?: "mdy" | "dmy" | "ymd" | "epoch" | "serial" | "elapsed";
  stampMarks?: "start" | "end" | "instant";
  stampZone?: string;
  sampling?: Sampling | "mixed";
  stepSeconds?: number | null;
};

/** A point as a preview shows it. `first`, `last` and `sum` are in the unit as written; times are null until known. */
export type TrendPointSummary = {
  name: string;
  kind: "numeric" | "state";
  unitAsWritten: string | null;
  unit: FileUnit | null;
  sampling: Sampling;
  readings: number;
  missing: number;
  firstUtc: string | null;
  lastUtc: string | null;
  first: number | string | null;
  last: number | string | null;
  sum?: number;
  spot?: { utc: string; value: number | string }[];
  states?: string[];
  intervalSeconds?: number;
};

/** A point with its readings: UTC seconds ascending without repeats, values in the unit as written or state numbers. */
export type TrendPoint = {
  name: string;
  kind: "numeric" | "state";
  unitAsWritten: string | null;
  unit: FileUnit | null;
  sampling: Sampling;
  tsUtcSeconds: Float64Array;
  values: Float64Array;
  /** Of a state point: `values` are indices into it. */
  stateNames?: string[];
  /** Cells that stand for "no value". */
  missing: number;
  /** Length of the interval that a reading sums up, where the file says so. */
  intervalSeconds?: number;
  /** File of a zip that the point came from. */
  file?: string;
};

export type RowFate = "accepted" | "repaired" | "held-back" | "rejected" | "ignored";
/** Rows below the first heading, blank lines apart: the five fates add up to `rowsInFile`. */
export type RowAccounting = {
  rowsInFile: number;
  accepted: number;
  repaired: number;
  heldBack: number;
  rejected: number;
  ignored: number;
};
export type RowNote = {
  line: number;
  fate: Exclude<RowFate, "accepted">;
  code: TrendFindingCode;
  excerpt: string;
  file?: string;
};

/** How far a reading is. */
export type ReadProgress = {
  bytesRead: number;
  bytesInFile: number;
  rows: number;
  readings: number;
  /** What was noticed so far, a finding for each code. */
  findings: readonly TrendFinding[];
};

/**
 * A point with some of its readings, in arrays that are good until the next part is asked for. How it is sampled, and
 * what is missing of it, only the whole file tells.
 */
export type PartPoint = Omit<TrendPoint, "sampling" | "missing"> & {
  /** Instants that the point's own are among, where it shares them with other points [UTC seconds, ascending]. */
  among?: Float64Array;
  /** How the values are written, where that is known. */
  written?: WrittenValues;
  /** The values as whole numbers, one stretch after the other, where they were kept so. */
  whole?: readonly WholeValues[];
};

/** Most decimals of some values, and the lowest and highest of them (Infinity and -Infinity where there is none). */
export type WrittenValues = { decimals: number; lowest: number; highest: number };

/** Values as whole numbers times 10^-decimals, and the lowest and highest of these numbers. */
export type WholeValues = { scaled: Int16Array | Int32Array; decimals: number; lowest: number; highest: number };

/** Points with the readings of one stretch of the file. A point may come again in the next part. */
export type TrendPart = {
  points: PartPoint[];
  progress: ReadProgress;
  /** True where a file is begun, perhaps anew: what came before of it is void. */
  isFirst: boolean;
};

/** What the whole file held, without its readings: the inspection and the fate of its rows. */
export type TrendFileResult = TrendInspection & {
  /** False while the order of day and month is not known: then the instants stand for nothing. */
  instantsKnown: boolean;
  rows: RowAccounting;
  rowNotes: RowNote[];
};

export type TrendInspection = {
  file: string;
  outcome: TrendOutcome;
  detected: TrendDetected;
  points: TrendPointSummary[];
  ask: TrendAsk[];
  findings: TrendFinding[];
  refusal: TrendRefusal | null;
  /** What only the whole file shows, of a file that is read in parts: given to the next reading, it needs no second look. */
  facts?: FileFacts;
};

/** A file's result with the readings of every point. `points` has none to store unless the outcome accepts. */
export type TrendReading = Omit<TrendFileResult, "points"> & { points: TrendPoint[] };

export const NO_ROWS: RowAccounting = {
  rowsInFile: 0,
  accepted: 0,
  repaired: 0,
  heldBack: 0,
  rejected: 0,
  ignored: 0,
};
