import { isEpochColumn, isStatusColumn, isWholeNumbers } from "./column-kinds";
import * as heading from "./heading-words";
import type { Preamble } from "./preamble";
import type { TimeSource } from "./stamp-column";
import { readStatistics, type StatisticsTable } from "./statistics-table";
import { type NameAndUnit, readUnit, splitUnit } from "./units";

export type ValueColumn = NameAndUnit & {
  column: number;
  heading: string;
  statusColumn: number | null;
  /** True when the name had to come from the file's own name. */
  nameFromFile: boolean;
};

/** Value columns that share one time source. */
export type ColumnGroup = { source: TimeSource; values: ValueColumn[] };

export type Layout = {
  form: "wide" | "long" | "one-point" | "pairs";
  groups: ColumnGroup[];
  long: {
    source: TimeSource;
    nameColumn: number;
    valueColumn: number;
    unitColumn: number | null;
    statusColumn: number | null;
  } | null;
  offsetColumn: number | null;
  /** Heading that the flags of a numeric status column stand under. */
  numericFlag: { column: number; heading: string; values: string[] } | null;
  statistics: StatisticsTable | null;
  /** Column of the end of each interval, when its start is the stamp. */
  endSource: TimeSource | null;
  stampMarks: "start" | "end" | "instant";
  saysUtc: boolean;
  namesRowUsed: boolean;
};

export type LayoutInput = {
  headings: readonly string[];
  units: readonly string[] | null;
  /** Row above the headings, if any. */
  above: readonly string[] | null;
  preamble: Preamble;
  sources: readonly TimeSource[];
  width: number;
  fileStem: string;
  /** Cells of a column, a sample of the data rows. */
  sample(column: number): string[];
  isWhollyBlank(column: number): boolean;
};

const columnsOf = (source: TimeSource): number[] =>
  source.form === "date-and-time" ? [source.dateColumn, source.timeColumn] : [source.column];

/** Decides what each column of a table is, from its heading and a sample of its cells. */
export function readLayout(input: LayoutInput): Layout {
  const { headings, width } = input;
  const headingOf = (column: number): string => (headings[column] ?? "").trim();
  const picked = pickSources(input.sources, headingOf);
  const taken = new Set(input.sources.flatMap(columnsOf));
  const firstSource = picked.sources[0] as TimeSource;
  const layout: Layout = {
    form: "wide",
    groups: [],
    long: null,
    offsetColumn: null,
    numericFlag: null,
    statistics: null,
    endSource: picked.end,
    stampMarks: picked.end ? "start" : marks(firstSource, headingOf),
    saysUtc: columnsOf(firstSource).some((column) => heading.saysUtc(headingOf(column))),
    namesRowUsed: false,
  };

  const free: number[] = [];
  const status: number[] = [];
  for (let column = 0; column < width; column++) {
    if (taken.has(column)) continue;
    const text = headingOf(column);
    if (text === "" && input.isWhollyBlank(column)) continue;
    if (layout.offsetColumn === null && heading.isOffsetHeading(text)) layout.offsetColumn = column;
    else if (heading.isIndexHeading(text) && isWholeNumbers(input.sample(column))) continue;
    else if (isEpochColumn(input.sample(column))) continue;
    else if (heading.isStatusHeading(text) && isStatusColumn(text, input.sample(column))) status.push(column);
    else free.push(column);
  }

  if (picked.sources.length > 1) return pairsLayout(layout, input, picked.sources, free, status);
  const long = longLayout(firstSource, free, status, headingOf);
  if (long) return { ...layout, form: "long", long, numericFlag: numericFlag(input, status, headingOf) };

  const statistics = readStatistics(free, headingOf);
  if (statistics) {
    const column = statistics.columns.get(statistics.proposal) as number;
    layout.statistics = statistics;
    layout.form = "one-point";
    layout.groups = [{ source: firstSource, values: [named(input, column, true, status)] }];
    return layout;
  }
  const values = free.filter((column) => !heading.isCountHeading(headingOf(column)) || free.length === 1);
  const alone =
    values.length === 1 &&
    (headings.length === 0 || heading.isValueHeading(splitUnit(headingOf(values[0] as number)).name));
  layout.form = alone ? "one-point" : "wide";
  layout.groups = [{ source: firstSource, values: values.map((column) => named(input, column, alone, status)) }];
  layout.numericFlag = numericFlag(input, status, headingOf);
  return layout;
}

/** One of several stamp columns may be the end of the interval or the same instant in another zone. */
function pickSources(
  sources: readonly TimeSource[],
  headingOf: (column: number) => string,
): { sources: TimeSource[]; end: TimeSource | null } {
  if (sources.length < 2) return { sources: [...sources], end: null };
  const heads = sources.map((source) => headingOf(columnsOf(source)[0] as number));
  const start = heads.findIndex((text) => heading.stampMark(text) === "start");
  const end = heads.findIndex((text) => heading.stampMark(text) === "end");
  if (start >= 0 && end >= 0) return { sources: [sources[start] as TimeSource], end: sources[end] as TimeSource };
  const places = sources.map((source) => columnsOf(source)[0] as number);
  const together = places.every((place, i) => i === 0 || place === (places[i - 1] as number) + 1);
  if (!together) return { sources: [...sources], end: null };
  const utc = heads.findIndex(heading.saysUtc);
  return { sources: [sources[Math.max(0, utc)] as TimeSource], end: null };
}

function marks(source: TimeSource, headingOf: (column: number) => string): "start" | "end" | "instant" {
  for (const column of columnsOf(source)) {
    const mark = heading.stampMark(headingOf(column));
    if (mark !== "instant") return mark;
  }
  return "instant";
}

function longLayout(
  source: TimeSource,
  free: readonly number[],
  status: readonly number[],
  headingOf: (column: number) => string,
): Layout["long"] {
  const nameColumn = free.find((column) => heading.isPointHeading(headingOf(column)));
  const valueColumn = free.find(
    (column) => column !== nameColumn && heading.isValueHeading(splitUnit(headingOf(column)).name),
  );
  if (nameColumn === undefined || valueColumn === undefined) return null;
  const unitColumn = free.find((column) => heading.isUnitHeading(headingOf(column))) ?? null;
  return { source, nameColumn, valueColumn, unitColumn, statusColumn: status[0] ?? null };
}

function pairsLayout(
  layout: Layout,
  input: LayoutInput,
  sources: readonly TimeSource[],
  free: readonly number[],
  status: readonly number[],
): Layout {
  const starts = sources.map((source) => columnsOf(source)[0] as number);
  const groups = sources.map((source, i) => {
    const from = starts[i] as number;
    const to = starts[i + 1] ?? input.width;
    const columns = free.filter((column) => column > from && column < to);
    const above = input.above?.slice(from, to).find((text) => text.trim() !== "");
    const values = columns.map((column) => {
      const value = named(input, column, false, status);
      if (above === undefined || !heading.isValueHeading(value.name)) return value;
      layout.namesRowUsed = true;
      const title = splitUnit(above);
      return {
        ...value,
        name: title.name,
        unitAsWritten: value.unitAsWritten ?? title.unitAsWritten,
        unit: value.unit ?? title.unit,
      };
    });
    return { source, values };
  });
  return { ...layout, form: "pairs", groups };
}

function named(input: LayoutInput, column: number, alone: boolean, status: readonly number[]): ValueColumn {
  const text = (input.headings[column] ?? "").trim();
  const fromLegend = input.preamble.legend.get(text);
  const parts = fromLegend ?? splitUnit(text);
  const unitsRowText = (input.units?.[column] ?? "").trim();
  const unit =
    parts.unitAsWritten !== null
      ? parts
      : (readUnit(/^[([{](.*)[)\]}]$/.exec(unitsRowText)?.[1] ?? unitsRowText) ??
        (alone && input.preamble.unitText ? readUnit(input.preamble.unitText) : null));
  const statusColumn = status.length === 1 ? (status[0] as number) : (status.find((other) => other > column) ?? null);
  const nameFromFile = alone && input.preamble.pointName === null;
  const name = alone
    ? (input.preamble.pointName ?? input.fileStem)
    : parts.name === ""
      ? `column ${column + 1}`
      : parts.name;
  return {
    column,
    heading: text,
    name,
    unitAsWritten: unit?.unitAsWritten ?? null,
    unit: unit?.unit ?? null,
    statusColumn,
    nameFromFile,
  };
}

function numericFlag(
  input: LayoutInput,
  status: readonly number[],
  headingOf: (column: number) => string,
): Layout["numericFlag"] {
  for (const column of status) {
    const values = [
      ...new Set(
        input
          .sample(column)
          .map((text) => text.trim())
          .filter((text) => text !== ""),
      ),
    ];
    if (values.length > 0 && values.every((text) => /^-?\d+$/.test(text))) {
      return { column, heading: headingOf(column), values: values.sort() };
    }
  }
  return null;
}
