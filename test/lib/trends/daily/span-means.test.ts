import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { localDaysOver, localHourEdges } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import { spanMeans } from "@/lib/trends/daily/span-means";
import { spanRanges } from "@/lib/trends/daily/span-ranges";
import type { PointSeries, Sampling } from "@/lib/trends/samples";
import wanted from "../../../fixtures/trends/local-day-means.json";
import { ascendingRows } from "../../../support/trend-samples";

const T0 = 1_719_792_000;

function series(sampling: Sampling, rows: readonly (readonly [number, number])[], decimals = 1): PointSeries {
  const ts = Float64Array.from(rows, ([at]) => at);
  return { sampling, samples: { ts, v: Int32Array.from(rows, ([, value]) => value), decimals } };
}

const hours = (count: number): Float64Array => Float64Array.from({ length: count + 1 }, (_, k) => T0 + k * 3600);

/** The records of the fixture's script. */
function fixtureSeries(from: number, to: number): { interval: PointSeries; changes: PointSeries } {
  const rows: [number, number][] = [];
  for (let at = from; at < to; at += 900) {
    const n = at / 900;
    if (!(n % 5 === 0 && Math.floor(at / 3600) % 3 === 0)) rows.push([at, 200 + ((n * 37) % 91)]);
  }
  const changes: [number, number][] = [];
  for (let at = from + 300, wait = 2220, k = 0; at < to; at += wait, wait += 660, k++)
    changes.push([at, 210 + ((k * 53) % 40)]);
  return { interval: series("interval", rows), changes: series("change-of-value", changes) };
}

describe("means over hours and local days", () => {
  it("is the plain mean of an interval point's samples, with the share of them that is there", () => {
    const point = series(
      "interval",
      [0, 900, 1800, 2700, 3600, 5400].map((at, k) => [T0 + at, 200 + 10 * k]),
    );
    expect(spanMeans(point, hours(3), { leastCoverage: 0.5 })).toEqual([
      { value: 21.5, coverage: 1 },
      { value: 24.5, coverage: 0.5 },
      { value: null, coverage: 0, reason: "no-samples" },
    ]);
    expect(spanMeans(point, hours(2))[1]).toEqual({ value: null, coverage: 0.5, reason: "below-coverage" });
  });

  it("weights a change-of-value point by time, and holds its last value for a day", () => {
    // 20.0 from minute 15 on, 26.0 from minute 45 on: (30 * 20 + 15 * 26) / 45 = 22.
    const point = series("change-of-value", [
      [T0 + 900, 200],
      [T0 + 2700, 260],
    ]);
    const means = spanMeans(point, hours(26));
    expect(means[0]).toEqual({ value: 22, coverage: 0.75 });
    expect(means[1]).toEqual({ value: 26, coverage: 1 });
    expect(means[24]).toEqual({ value: 26, coverage: 0.75 });
    expect(means[25]).toEqual({ value: null, coverage: 0, reason: "no-samples" });
  });

  it("takes the lowest and highest sample, and the value still held of a change-of-value point", () => {
    const rows = [
      [T0 + 60, 230],
      [T0 + 3600, 210],
      [T0 + 9000, 250],
    ] as const;
    expect(spanRanges(series("interval", rows), hours(3))).toEqual([
      { lowest: 23, highest: 23 },
      { lowest: 21, highest: 21 },
      { lowest: 25, highest: 25 },
    ]);
    expect(spanRanges(series("change-of-value", rows), hours(28)).slice(1, 4)).toEqual([
      { lowest: 21, highest: 21 },
      { lowest: 21, highest: 25 },
      { lowest: 25, highest: 25 },
    ]);
    expect(spanRanges(series("change-of-value", rows), hours(28))[27]).toBeNull();
  });

  it.each(wanted.cases)("agrees with zoneinfo around a clock change: $timeZone from $firstDate", (of) => {
    const from = of.days[0]?.from ?? 0;
    const days = localDaysOver(zoneTable(of.timeZone), { fromUtcSeconds: from, toUtcSeconds: of.toUtcSeconds });
    const { interval, changes } = fixtureSeries(from, of.toUtcSeconds);
    const any = { leastCoverage: 0 };
    const byDay = { interval: spanMeans(interval, days.edges, any), changes: spanMeans(changes, days.edges, any) };
    const ranges = { interval: spanRanges(interval, days.edges), changes: spanRanges(changes, days.edges) };
    of.days.forEach((day, k) => {
      for (const kind of ["interval", "changes"] as const) {
        expect(byDay[kind][k]?.value, day.date).toBeCloseTo(day[kind].mean as number, 9);
        expect(ranges[kind][k], day.date).toEqual({ lowest: day[kind].low, highest: day[kind].high });
      }
      expect(byDay.interval[k]?.coverage).toBeCloseTo(Math.min(1, day.interval.samples / (day.minutes / 15)), 9);
      expect(byDay.changes[k]?.coverage).toBeCloseTo(day.changes.heldSeconds / (day.minutes * 60), 9);
    });
    const edges = localHourEdges(days);
    const byHour = { interval: spanMeans(interval, edges, any), changes: spanMeans(changes, edges, any) };
    const hourly = of.days.flatMap((day) => day.hours);
    expect(hourly).toHaveLength(edges.length - 1);
    hourly.forEach(([, mean, heldMean], k) => {
      expect(byHour.interval[k]?.value).toBeCloseTo(mean as number, 9);
      if (heldMean === null) expect(byHour.changes[k]?.value).toBeNull();
      else expect(byHour.changes[k]?.value).toBeCloseTo(heldMean as number, 9);
    });
  });

  it("has hourly means whose mean is the daily mean when nothing is missing", () => {
    const value = fc.integer({ min: 150, max: 320 });
    fc.assert(
      fc.property(fc.array(value, { minLength: 96, maxLength: 96 }), (values) => {
        const point = series(
          "interval",
          values.map((each, k) => [T0 + k * 900, each]),
        );
        const day = spanMeans(point, Float64Array.of(T0, T0 + 86_400))[0]?.value;
        const hourly = spanMeans(point, hours(24)).map((each) => each.value ?? Number.NaN);
        expect(hourly.reduce((sum, each) => sum + each, 0) / 24).toBeCloseTo(day as number, 9);
      }),
    );
  });

  it("stays within lowest and highest, with a coverage from 0 to 1, whatever the record", () => {
    const sampling = fc.constantFrom<Sampling>("interval", "change-of-value");
    fc.assert(
      fc.property(ascendingRows, sampling, (rows, way) => {
        const point = series(way, rows, 0);
        const edges = Float64Array.from({ length: 12 }, (_, k) => (rows[0]?.[0] ?? 0) - 7200 + k * 5400);
        const ranges = spanRanges(point, edges);
        spanMeans(point, edges, { leastCoverage: 0 }).forEach((mean, k) => {
          expect(mean.coverage).toBeGreaterThanOrEqual(0);
          expect(mean.coverage).toBeLessThanOrEqual(1);
          const range = ranges[k];
          if (mean.value === null) return;
          if (!range) throw new Error("a mean without a range");
          const slack = 1e-9 * Math.max(1, Math.abs(range.lowest), Math.abs(range.highest));
          expect(mean.value).toBeGreaterThanOrEqual(range.lowest - slack);
          expect(mean.value).toBeLessThanOrEqual(range.highest + slack);
        });
      }),
    );
  });
});
