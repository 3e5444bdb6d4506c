import { DRY_BULB_LIMITS_C } from "./dry-bulb";
import { refuse, type WeatherFinding, type WeatherRefusal, type WeatherRow } from "./weather-file";
import { hourName } from "./year-hours";

/** Longest run of missing values that is filled (CalTRACK-style practice: gaps of up to six hours are interpolated). */
export const LONGEST_FILLED_GAP_H = 6;
const LISTED_LINES = 20;

/**
 * Dry bulb by hour with short gaps filled on a straight line between their neighbours. Values outside the limits of
 * the format count as missing. The year is a circle: a gap across its ends leans on both. A longer gap is refused.
 */
export function fillGaps(
  rows: readonly WeatherRow[],
): { status: "ok"; dryBulbC: Float64Array; findings: WeatherFinding[] } | WeatherRefusal {
  const outside = rows.filter((row) => row.dryBulbC !== null && !isWithinLimits(row.dryBulbC));
  const values = rows.map((row) => (row.dryBulbC !== null && isWithinLimits(row.dryBulbC) ? row.dryBulbC : null));
  const gaps = gapsOf(values);
  const longest = gaps.reduce((most, gap) => Math.max(most, gap.hours), 0);
  if (longest > LONGEST_FILLED_GAP_H) return gapTooLong(gaps, rows, outside);

  const dryBulbC = Float64Array.from(values, (value) => value ?? 0);
  const count = values.length;
  for (const gap of gaps) {
    const before = dryBulbC[(gap.start + count - 1) % count] ?? 0;
    const after = dryBulbC[(gap.start + gap.hours) % count] ?? 0;
    for (let step = 1; step <= gap.hours; step++) {
      dryBulbC[(gap.start + step - 1) % count] = before + ((after - before) * step) / (gap.hours + 1);
    }
  }
  return { status: "ok", dryBulbC, findings: findingsOf(gaps, rows, outside) };
}

type Gap = { start: number; hours: number };

const isWithinLimits = (dryBulbC: number): boolean =>
  dryBulbC > DRY_BULB_LIMITS_C.low && dryBulbC < DRY_BULB_LIMITS_C.high;

/** Runs of nulls around the circle, each by the index of its first hour. */
function gapsOf(values: readonly (number | null)[]): Gap[] {
  const count = values.length;
  const firstKnown = values.findIndex((value) => value !== null);
  if (firstKnown < 0) return [{ start: 0, hours: count }];
  const gaps: Gap[] = [];
  let current: Gap | null = null;
  for (let step = 1; step <= count; step++) {
    const at = (firstKnown + step) % count;
    if (values[at] !== null) current = null;
    else if (current) current.hours++;
    else {
      current = { start: at, hours: 1 };
      gaps.push(current);
    }
  }
  return gaps;
}

function gapTooLong(gaps: Gap[], rows: readonly WeatherRow[], outside: readonly WeatherRow[]): WeatherRefusal {
  const long = gaps.filter((gap) => gap.hours > LONGEST_FILLED_GAP_H);
  const gap = long.reduce((worst, candidate) => (candidate.hours > worst.hours ? candidate : worst));
  const row = rows[gap.start];
  const others = long.length > 1 ? ` There are ${long.length} gaps of that kind.` : "";
  const [odd] = outside;
  const range = odd
    ? ` ${outside.length} values lie outside ${DRY_BULB_LIMITS_C.low} to ${DRY_BULB_LIMITS_C.high} °C (${odd.dryBulbC} in line ${odd.line}); check that the file is in °C.`
    : "";
  return refuse(
    "values-missing",
    `${gap.hours} hours in a row have no outdoor air temperature, from ${hourName(gap.start)} (line ${row?.line ?? "?"}). Up to ${LONGEST_FILLED_GAP_H} hours can be filled from their neighbours.${others}${range} Use a complete file.`,
    long.map((each) => rows[each.start]?.line ?? 0),
  );
}

function findingsOf(gaps: readonly Gap[], rows: readonly WeatherRow[], outside: readonly WeatherRow[]) {
  const findings: WeatherFinding[] = [];
  if (gaps.length > 0) {
    findings.push({
      code: "missing-values-filled",
      severity: "caution",
      evidence: {
        hours: gaps.reduce((sum, gap) => sum + gap.hours, 0),
        gaps: gaps.length,
        longestGapHours: Math.max(...gaps.map((gap) => gap.hours)),
        lines: gaps.slice(0, LISTED_LINES).map((gap) => rows[gap.start]?.line ?? 0),
      },
    });
  }
  if (outside.length > 0) {
    const listed = outside.slice(0, LISTED_LINES);
    findings.push({
      code: "values-out-of-range",
      severity: "caution",
      evidence: {
        count: outside.length,
        lines: listed.map((row) => row.line),
        values: listed.map((row) => row.dryBulbC ?? 0),
      },
    });
  }
  return findings;
}
