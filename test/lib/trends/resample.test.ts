import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { asOf } from "@/lib/trends/as-of";
import { type Grid, gridOver } from "@/lib/trends/grid";
import { resample, resampleState } from "@/lib/trends/resample";
import { type PointSeries, type Sampling, usualStepSeconds } from "@/lib/trends/samples";
import { ascendingRows } from "../../support/trend-samples";

const START = 1_719_792_000;

function series(sampling: Sampling, rows: readonly (readonly [number, number])[], decimals = 0): PointSeries {
  return {
    sampling,
    samples: {
      ts: Float64Array.from(rows, ([at]) => at),
      v: Int32Array.from(rows, ([, value]) => value),
      decimals,
    },
  };
}

const grid = (count: number): Grid => ({ startUtcSeconds: START, stepSeconds: 900, count });
const NONE = Number.NaN;

describe("gridOver", () => {
  it("puts edges at whole quarters of an hour and covers the span", () => {
    expect(gridOver({ fromUtcSeconds: START + 7, toUtcSeconds: START + 1801 })).toEqual(grid(3));
  });

  it("is empty for an empty span", () => {
    expect(gridOver({ fromUtcSeconds: START, toUtcSeconds: START }).count).toBe(0);
  });
});

describe("resample, interval samples", () => {
  it("averages five-minute samples into a quarter of an hour", () => {
    const rows = [20, 21, 25, 30, 30, 30].map((value, i) => [START + i * 300, value] as const);
    expect([...resample(series("interval", rows), grid(3))]).toEqual([22, 30, NONE]);
  });

  it("weights samples off the grid by the time they cover", () => {
    // 22 from 10 min before the first edge to 5 min after it, then 28 to 20 min: cell 1 is (22*5 + 28*10)/15.
    const rows = [
      [START - 600, 22],
      [START + 300, 28],
      [START + 1200, 10],
    ] as const;
    expect(resample(series("interval", rows), grid(1))[0]).toBeCloseTo(26, 12);
  });

  it("leaves a gap of more than one and a half usual steps empty", () => {
    const rows = [0, 1, 2, 6, 7].map((k) => [START + k * 900, 10 + k] as const);
    expect([...resample(series("interval", rows), grid(9))]).toEqual([10, 11, 12, NONE, NONE, NONE, 16, 17, NONE]);
  });

  it("bridges one late sample within one and a half steps", () => {
    const rows = [0, 900, 1800, 3100, 3600].map((at, k) => [START + at, k] as const);
    const values = resample(series("interval", rows), grid(5));
    expect(values[3]).toBeCloseTo((2 * 400 + 3 * 500) / 900, 12);
  });

  it("spreads hourly samples over their hour", () => {
    const rows = [0, 1, 2].map((k) => [START + k * 3600, k] as const);
    expect([...resample(series("interval", rows), grid(13))]).toEqual([0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, NONE]);
  });

  it("needs half of an interval covered", () => {
    const rows = [0, 300, 600, 900].map((at) => [START + at, 5] as const);
    expect([...resample(series("interval", rows), grid(3))]).toEqual([5, NONE, NONE]);
    const seven = [...rows, [START + 1200, 5] as const];
    expect([...resample(series("interval", seven), grid(3))]).toEqual([5, 5, NONE]);
  });
});

describe("resample, change of value", () => {
  it("holds a value until the next, weighted by time", () => {
    const rows = [
      [START, 20],
      [START + 4500 + 300, 26],
    ] as const;
    const values = resample(series("change-of-value", rows), grid(6));
    expect([...values.subarray(0, 5)]).toEqual([20, 20, 20, 20, 20]);
    expect(values[5]).toBeCloseTo((20 * 300 + 26 * 600) / 900, 12);
  });

  it("holds across months between two samples but not before the first nor a day past the last", () => {
    const rows = [
      [START, 21],
      [START + 60 * 86400, 22],
    ] as const;
    const values = resample(series("change-of-value", rows), {
      startUtcSeconds: START - 86400,
      stepSeconds: 900,
      count: 64 * 96,
    });
    expect(values[95]).toBeNaN();
    expect(values[96]).toBe(21);
    expect(values[61 * 96 - 1]).toBe(21);
    expect(values[61 * 96]).toBe(22);
    expect(values[62 * 96 - 1]).toBe(22);
    expect(values[62 * 96]).toBeNaN();
  });

  it("takes the later of two samples at one instant", () => {
    const rows = [
      [START, 20],
      [START, 24],
    ] as const;
    expect(resample(series("change-of-value", rows), grid(1))[0]).toBe(24);
  });

  it("sums to the exact integral of the held values", () => {
    fc.assert(
      fc.property(ascendingRows, (rows) => {
        const small = rows.map(([at, value]) => [at, value % 1000] as [number, number]);
        const first = small[0]?.[0] ?? 0;
        const last = small.at(-1)?.[0] ?? 0;
        // Edges on the first and last sample's own second, so that every covered second is in a full cell.
        const step = 60;
        const count = Math.floor((last - first) / step);
        if (count === 0) return;
        const whole = { startUtcSeconds: first, stepSeconds: step, count };
        const values = resample(series("change-of-value", small), whole);
        const end = first + count * step;
        let exact = 0;
        small.forEach(([at, value], i) => {
          const until = Math.min(end, small[i + 1]?.[0] ?? at);
          if (until > at) exact += value * (until - at);
        });
        const summed = values.reduce((sum, each) => sum + each * step, 0);
        expect(Math.abs(summed - exact)).toBeLessThan(1e-6 * Math.max(1, Math.abs(exact), count * step));
      }),
      { numRuns: 60 },
    );
  });
});

describe("resampleState", () => {
  it("takes the state that held for at least half of an interval", () => {
    const rows = [
      [START, 0],
      [START + 900 + 450, 1],
      [START + 2700 + 500, 0],
    ] as const;
    expect([...resampleState(series("change-of-value", rows), grid(5), { holdAfterLastSeconds: 900 })]).toEqual([
      0, 1, 1, 1, 0,
    ]);
  });
});

describe("usualStepSeconds", () => {
  it("is the step of most samples whatever the gaps", () => {
    const ts = Float64Array.from({ length: 5000 }, (_, i) => START + i * 300 + (i > 2500 ? 1e6 : 0));
    expect(usualStepSeconds(ts)).toBe(300);
    expect(usualStepSeconds(new Float64Array([START]))).toBeNull();
  });
});

describe("asOf", () => {
  it("finds the last sample at or before an instant, within its age", () => {
    const { samples } = series(
      "change-of-value",
      [
        [100, 215],
        [200, 220],
      ],
      1,
    );
    expect(asOf(samples, [99, 100, 199, 200, 260, 261], 60)).toEqual([null, 21.5, null, 22, 22, null]);
  });
});
