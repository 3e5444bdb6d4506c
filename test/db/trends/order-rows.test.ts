import fc from "fast-check";
import { expect, test } from "vitest";
import { orderRows } from "@/db/trends/order-rows";
import { rowsOf, slice, T0 } from "../../support/trend-samples";

const ordered = (rows: [number, number][]) => orderRows(slice(1, rows));

/** Value of the last row before row `i` that has its time. */
const valueBefore = (rows: [number, number][], i: number): number | undefined =>
  rows.slice(0, i).findLast(([ts]) => ts === rows[i]?.[0])?.[1];

test("rows in order are taken as they are", () => {
  const rows = slice(1, [
    [T0, 1],
    [T0 + 1, 2],
  ]);
  expect(orderRows(rows).ts).toBe(rows.ts);
});

test("of rows with the same time the later one stands", () => {
  const result = ordered([
    [T0 + 60, 1],
    [T0, 2],
    [T0 + 60, 3],
    [T0, 4],
    [T0 + 60, 5],
  ]);
  expect(rowsOf(result)).toEqual([
    [T0, 4],
    [T0 + 60, 5],
  ]);
  expect(result.repeated).toEqual({ same: 0, changed: 3 });
});

test("any order gives what a map by time gives, over a day or over centuries", () => {
  for (const span of [86_400, 9_000_000_000]) {
    const row = fc.tuple(fc.integer({ min: T0, max: T0 + span }), fc.nat());
    const rowsWithRepeats = fc
      .array(row, { maxLength: 60 })
      .map((rows) => [...rows, ...rows.slice(0, 9).map(([t], i): [number, number] => [t, i])]);
    fc.assert(
      fc.property(rowsWithRepeats, (rows) => {
        const expected = [...new Map(rows)].sort(([a], [b]) => a - b);
        const result = ordered(rows);
        expect(rowsOf(result)).toEqual(expected);
        const { same, changed } = result.repeated;
        expect(same + changed).toBe(rows.length - expected.length);
        expect(same).toBe(rows.filter((row, i) => valueBefore(rows, i) === row[1]).length);
      }),
      { numRuns: 100, seed: 5 },
    );
  }
});

test("so many rows over so long a time that both do not fit one double are ordered too", () => {
  const count = 1_000_000;
  const ts = Float64Array.from({ length: count }, (_, i) => 9_500_000_000 - i * 9_100);
  const result = orderRows({ ts, v: Int32Array.from(ts.keys()) });
  expect(result.ts[0]).toBe(9_500_000_000 - (count - 1) * 9_100);
  expect(result.v[0]).toBe(count - 1);
  expect(result.v[count - 1]).toBe(0);
});
