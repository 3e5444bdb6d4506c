import { isStatusHeading, isTimeHeading, isUnitHeading } from "./heading-words";
import type { Rows } from "./rows";
import type { TrendRefusal } from "./trend-file";

const MOST_LINES = 20;

export const datesDestroyed = (lines: number[]): TrendRefusal => ({
  code: "dates-destroyed",
  sentence:
    "The times cannot be read: the dates were replaced by #### when the file was saved from a spreadsheet (or only minutes were left of them). Export again, or widen the column and save again; best is to import the export itself, never opened in a spreadsheet.",
  lines: lines.slice(0, MOST_LINES),
});

export const timesWithoutDates = (): TrendRefusal => ({
  code: "no-dates",
  sentence:
    "The rows have times of day but no dates, so no reading can be placed. Export again with date and time in each row, and do not save the file from a spreadsheet that hides the date.",
});

/** A heading with nothing under it, or no table of times at all. */
export function withoutStamps(rows: Rows): TrendRefusal {
  const isHeading = (row: number): boolean =>
    rows.width(row) > 1 &&
    rows.cellsOf(row).some((cell) => cell.length < 40 && !/\d{4}/.test(cell) && isTimeHeading(cell));
  let heading = 0;
  while (heading < rows.count && !isHeading(heading)) heading++;
  if (heading === rows.count) heading = -1;
  let below = heading + 1;
  while (below < rows.count && !rows.cellsOf(below).some((cell) => /\d/.test(cell))) below++;
  if (heading < 0 || below < rows.count) {
    return {
      code: "not-a-trend-export",
      sentence:
        heading < 0
          ? "No column of dates and times could be found, so this is not a trend export. Import a CSV file with a time in each row and the points in columns, or one row a reading."
          : `The column of times (heading on line ${rows.lines[heading]}) holds nothing that can be read as a date and time. Export again with full dates, for example 2026-07-06 08:15.`,
    };
  }
  const points = rows
    .cellsOf(heading)
    .filter(
      (cell) => cell.trim() !== "" && !isTimeHeading(cell) && !isUnitHeading(cell) && !isStatusHeading(cell),
    ).length;
  return noReadings(points, "There is a heading and nothing under it.");
}

export const noReadings = (points: number, why: string): TrendRefusal => ({
  code: "no-readings",
  sentence: `${points} ${points === 1 ? "point" : "points"} found, no readings. ${why} Check the dates asked for in the export, and that the points were being logged then.`,
});

export const foreignZone = (words: readonly string[], timeZone: string): TrendRefusal => ({
  code: "zone-word-unknown",
  sentence: `The times are marked ${words.map((word) => `"${word}"`).join(", ")}, which is not how the building's zone (${timeZone}) is called. Check the building's time zone, or export with the offset from UTC in each time.`,
});

export function mixedFormats(lines: readonly number[], contradictory: boolean): TrendRefusal {
  const shown = lines.slice(0, MOST_LINES);
  const where = shown.map((line, i) => (i === 0 ? `at line ${line}` : `again at line ${line}`));
  const text = where.length < 2 ? where.join("") : `${where.slice(0, -1).join(", ")} and ${where.at(-1)}`;
  const what = contradictory
    ? `the time column changes its format: the dates are month first on some rows and day first on others (lines ${shown.join(" and ")})`
    : `the time column changes its format ${text}`;
  return {
    code: "mixed-date-formats",
    sentence: `Nothing was taken in, because ${what}. A wrong month is worse than no data: export again without editing by hand.`,
    lines: [...shown],
  };
}

export const columnsDoNotMatch = (rowLine: number, expected: number): TrendRefusal => ({
  code: "columns-do-not-match",
  sentence: `Most rows have more fields than the heading has columns (${expected}; the first is line ${rowLine}), so values would land under the wrong point. A decimal comma in a comma-separated file does this: export with semicolons, with a decimal point, or with every field in quotes.`,
  lines: [rowLine],
});
