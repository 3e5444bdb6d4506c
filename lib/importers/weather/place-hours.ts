import { refuse, type WeatherFinding, type WeatherRefusal, type WeatherRow } from "./weather-file";
import { HOURS_IN_WEATHER_YEAR, hourIndex, hourName } from "./year-hours";

/** The first lines or hours named in a message; the rest are counted. */
const NAMED = 5;

export type PlacedHours = {
  status: "ok";
  /** Row of each hour of the year. */
  rows: readonly WeatherRow[];
  findings: WeatherFinding[];
};

/**
 * Gives each row its hour of the year by month, day and hour; the year plays no part, since the months of a typical
 * year come from different years. Drops 29 February. Every other hour must be there exactly once.
 */
export function placeHours(rows: readonly WeatherRow[]): PlacedHours | WeatherRefusal {
  const placed: (WeatherRow | undefined)[] = new Array(HOURS_IN_WEATHER_YEAR).fill(undefined);
  const twice: { index: number; lines: [number, number] }[] = [];
  const leapRows: WeatherRow[] = [];
  let previous = -1;
  let firstOutOfOrder: number | null = null;

  for (const row of rows) {
    if (row.month === 2 && row.day === 29) {
      leapRows.push(row);
      continue;
    }
    const index = hourIndex(row);
    if (index === null) return badHour(row);
    const other = placed[index];
    if (other) twice.push({ index, lines: [other.line, row.line] });
    else placed[index] = row;
    if (index < previous && firstOutOfOrder === null) firstOutOfOrder = row.line;
    previous = index;
  }

  const missing = placed.flatMap((row, index) => (row ? [] : [index]));
  if (missing.length > 0) return hoursMissing(missing, twice.length, rows.length);
  const [repeat] = twice;
  if (repeat) {
    const more = twice.length > 1 ? ` and ${twice.length - 1} more hours stand twice` : "";
    return refuse(
      "hour-twice",
      `The hour ${hourName(repeat.index)} stands twice, in lines ${repeat.lines.join(" and ")}${more}. A weather year has each hour once; remove the rows that do not belong.`,
      twice.flatMap((hour) => hour.lines),
    );
  }
  const complete = placed.filter((row) => row !== undefined);
  return { status: "ok", rows: complete, findings: findingsOf({ complete, leapRows, firstOutOfOrder }) };
}

function badHour({ line, month, day, hour }: WeatherRow): WeatherRefusal {
  const wrong =
    hour < 1 || hour > 24
      ? `hour ${hour}, but hours run from 1 to 24 and name the end of the hour`
      : `month ${month}, day ${day}, which is no day of the calendar`;
  return refuse("bad-row", `Line ${line} says ${wrong}. Correct the row or download the file again.`, [line]);
}

function hoursMissing(missing: readonly number[], repeats: number, rowCount: number): WeatherRefusal {
  const named = missing.slice(0, NAMED).map(hourName).join("; ");
  const more = missing.length > NAMED ? `; and ${missing.length - NAMED} more` : "";
  const clocks =
    missing.length === 1 && repeats === 1
      ? " One hour is missing and another stands twice: the file seems to follow daylight saving time, but weather files are in standard time."
      : "";
  const count = missing.length === 1 ? "1 hour is" : `${missing.length} hours are`;
  return refuse(
    "hours-missing",
    `${count} missing of the ${HOURS_IN_WEATHER_YEAR} of a year (the file has ${rowCount} rows): ${named}${more}.${clocks} A whole year is needed; download the file again or add the rows.`,
  );
}

function findingsOf(found: {
  complete: readonly WeatherRow[];
  leapRows: readonly WeatherRow[];
  firstOutOfOrder: number | null;
}): WeatherFinding[] {
  const findings: WeatherFinding[] = [];
  const lines = found.leapRows.map((row) => row.line);
  if (lines.length > 0) {
    const evidence = { rows: lines.length, firstLine: lines[0] ?? null };
    findings.push({ code: "leap-day-dropped", severity: "note", evidence });
  }
  const years = [...new Set(found.complete.map((row) => row.year))].sort((a, b) => a - b);
  if (years.length > 1) findings.push({ code: "months-from-different-years", severity: "note", evidence: { years } });
  if (found.firstOutOfOrder !== null) {
    findings.push({
      code: "rows-not-in-calendar-order",
      severity: "note",
      evidence: { firstLine: found.firstOutOfOrder },
    });
  }
  return findings;
}
