import fc from "fast-check";
import { expect, test } from "vitest";
import { mergeSamples } from "@/db/trends/merge";
import { rowsOf, slice, T0 } from "../../support/trend-samples";

const NONE = { same: 0, changed: 0 };

test("new rows are added, other values changed, equal ones left", () => {
  const before = slice(1, [
    [T0, 1],
    [T0 + 60, 2],
    [T0 + 180, 3],
  ]);
  const incoming = slice(1, [
    [T0 + 60, 2],
    [T0 + 120, 9],
    [T0 + 180, 4],
    [T0 + 240, 5],
  ]);
  const { merged, ...counts } = mergeSamples(before, incoming);
  expect(counts).toEqual({ added: 2, changed: 1, same: 1, repeated: NONE });
  expect(merged && rowsOf(merged)).toEqual([
    [T0, 1],
    [T0 + 60, 2],
    [T0 + 120, 9],
    [T0 + 180, 4],
    [T0 + 240, 5],
  ]);
});

test("rows that are all there already give nothing to write, with more decimals as well", () => {
  const before = slice(
    1,
    [
      [T0, 215],
      [T0 + 60, 216],
    ],
    1,
  );
  const unchanged = { added: 0, changed: 0, repeated: NONE, merged: null };
  expect(mergeSamples(before, before)).toEqual({ ...unchanged, same: 2 });
  expect(mergeSamples(before, slice(1, [[T0, 21_500]], 3))).toEqual({ ...unchanged, same: 1 });
});

test("the larger number of decimals is kept, whichever side has it", () => {
  const coarse = slice(1, [[T0, 215]], 1);
  const fine = slice(1, [[T0 + 60, 21_555]], 3);
  const expected = [
    [T0, 21_500],
    [T0 + 60, 21_555],
  ];
  for (const { merged } of [mergeSamples(coarse, fine), mergeSamples(fine, coarse)]) {
    expect(merged?.decimals).toBe(3);
    expect(merged && rowsOf(merged)).toEqual(expected);
  }
});

test("any two sets of samples merge as maps by time do", () => {
  const rows = fc.array(fc.tuple(fc.integer({ min: T0, max: T0 + 50 }), fc.integer({ min: 0, max: 2 })), {
    minLength: 1,
  });
  const ascending = rows.map((list) => [...new Map(list)].sort(([a], [b]) => a - b));
  fc.assert(
    fc.property(ascending, ascending, (before, incoming) => {
      const old = new Map(before);
      const { merged, added, changed, same } = mergeSamples(slice(1, before), slice(1, incoming));
      expect(merged ? rowsOf(merged) : before).toEqual(
        [...new Map([...before, ...incoming])].sort(([a], [b]) => a - b),
      );
      expect(added).toBe(incoming.filter(([t]) => !old.has(t)).length);
      expect(same).toBe(incoming.filter(([t, v]) => old.get(t) === v).length);
      expect(added + changed + same).toBe(incoming.length);
    }),
    { numRuns: 200, seed: 3 },
  );
});

test("samples that meet one of their own write count as repeats, and the later still stands", () => {
  const before = slice(1, [
    [T0, 1],
    [T0 + 60, 2],
    [T0 + 120, 3],
  ]);
  const incoming = slice(1, [
    [T0, 1],
    [T0 + 60, 9],
    [T0 + 120, 9],
  ]);
  const { merged, ...counts } = mergeSamples(before, incoming, (index) => index < 2);
  expect(counts).toEqual({ added: 0, changed: 1, same: 0, repeated: { same: 1, changed: 1 } });
  expect(merged && rowsOf(merged)).toEqual(rowsOf(incoming));
});
