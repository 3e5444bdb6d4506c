import { formatUtc } from "./format-utc";
import { readTrendFile } from "./read-trend-file";
import type { TrendFileInput, TrendInspection, TrendPoint, TrendPointSummary, TrendReading } from "./trend-file";

/** Reads a trend export and says what is in it, what was noticed and what has to be asked; stores nothing. */
export async function inspectTrendFile(input: TrendFileInput): Promise<TrendInspection> {
  return inspectionOf(await readTrendFile(input));
}

/** The inspection of a file that has been read, in plain values that can be kept as JSON. */
export function inspectionOf(reading: TrendReading): TrendInspection {
  const { file, outcome, detected, ask, findings, refusal } = reading;
  const points = reading.points.map((point) => summaryOf(point, reading.instantsKnown));
  return { file, outcome, detected, points, ask, findings, refusal };
}

function summaryOf(point: TrendPoint, instantsKnown: boolean): TrendPointSummary {
  const { tsUtcSeconds, values, stateNames } = point;
  const n = tsUtcSeconds.length;
  const valueAt = (i: number): number | string | null => {
    if (i < 0 || i >= n) return null;
    const value = values[i] as number;
    return stateNames ? (stateNames[value] ?? null) : value;
  };
  const utcAt = (i: number): string | null =>
    i < 0 || i >= n || !instantsKnown ? null : formatUtc(tsUtcSeconds[i] as number);
  return {
    name: point.name,
    kind: point.kind,
    unitAsWritten: point.unitAsWritten,
    unit: point.unit,
    sampling: point.sampling,
    readings: n,
    missing: point.missing,
    firstUtc: utcAt(0),
    lastUtc: utcAt(n - 1),
    first: instantsKnown ? valueAt(0) : null,
    last: instantsKnown ? valueAt(n - 1) : null,
    ...(stateNames ? { states: stateNames } : { sum: values.reduce((sum, value) => sum + value, 0) }),
    ...(instantsKnown ? { spot: spotsOf(n, utcAt, valueAt) } : {}),
    ...(point.intervalSeconds === undefined ? {} : { intervalSeconds: point.intervalSeconds }),
  };
}

/** Up to four readings spread between the first and the last. */
function spotsOf(
  n: number,
  utcAt: (i: number) => string | null,
  valueAt: (i: number) => number | string | null,
): { utc: string; value: number | string }[] {
  const places = new Set([1, 2, 3, 4].map((k) => Math.round((k * (n - 1)) / 5)).filter((i) => i > 0 && i < n - 1));
  return [...places].flatMap((i) => {
    const [utc, value] = [utcAt(i), valueAt(i)];
    return utc === null || value === null ? [] : [{ utc, value }];
  });
}
