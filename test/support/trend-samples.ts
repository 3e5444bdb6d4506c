import fc from "fast-check";
import type { TrendSlice } from "@/lib/trends/trend-store";

/** 2024-01-01T00:00:00Z. */
export const T0 = 1_704_067_200;

export function slice(series: number, rows: readonly (readonly [number, number])[], decimals = 1): TrendSlice {
  const ts = Float64Array.from(rows, ([time]) => time);
  const v = Int32Array.from(rows, ([, value]) => value);
  return { series, ts, v, decimals };
}

export function rowsOf({ ts, v }: { ts: Float64Array; v: Int32Array }): [number, number][] {
  return Array.from(ts, (time, i) => [time, v[i] as number]);
}

/** Regular rows: `count` of them every `step` seconds from `start`, values by index. */
export function regular(start: number, step: number, count: number, value: (i: number) => number): [number, number][] {
  return Array.from({ length: count }, (_, i) => [start + i * step, value(i)]);
}

const int32 = fc.integer({ min: -2_147_483_648, max: 2_147_483_647 });
const distance = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(60, 300, 900, 3600) },
  { weight: 2, arbitrary: fc.integer({ min: 1, max: 5000 }) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 300_000 }) },
);
const value = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 180, max: 280 }) },
  { weight: 2, arbitrary: fc.constantFrom(0, 22_000, -22_000) },
  { weight: 1, arbitrary: int32 },
  { weight: 1, arbitrary: fc.constantFrom(-2_147_483_648, 2_147_483_647) },
);

/** Ascending rows of any step, with gaps, odd seconds, runs, negative values, big jumps and the ends of 32 bits. */
export const ascendingRows: fc.Arbitrary<[number, number][]> = fc
  .record({
    start: fc.integer({ min: T0, max: T0 + 86_400 }),
    regular: fc.option(fc.constantFrom(1, 7, 60, 900)),
    steps: fc.array(fc.record({ distance, value, repeat: fc.nat({ max: 40 }) }), { minLength: 1, maxLength: 40 }),
  })
  .map(({ start, regular: usual, steps }) => {
    const rows: [number, number][] = [];
    let time = start;
    for (const step of steps) {
      for (let i = 0; i <= step.repeat; i++) {
        rows.push([time, step.value]);
        time += usual ?? step.distance;
      }
      if (usual !== null && step.repeat % 5 === 0) time += usual * (step.distance % 50);
    }
    return rows;
  });
