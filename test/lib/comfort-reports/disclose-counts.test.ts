import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { discloseCounts, LEAST_PEOPLE, type OccupantGroup } from "@/lib/comfort-reports/disclosure/disclose-counts";
import { countOfDay, countOrMerged, mergedNote } from "@/lib/comfort-reports/disclosure/disclosure-words";
import { leastPeople } from "@/lib/comfort-reports/disclosure/least-people";

type Group = OccupantGroup<string, "cold" | "hot">;
const COLUMNS = ["cold", "hot"] as const;
const group = (key: string, people: number, cold: number, hot: number): Group => ({
  key,
  people,
  counts: { cold, hot },
});
const disclose = (groups: readonly Group[], least: number = LEAST_PEOPLE.screen) =>
  discloseCounts(groups, COLUMNS, least);

describe("counts of groups of occupants", () => {
  it("are all shown where each group has five people, or has sent nothing", () => {
    const { hidden, totals } = disclose([group("a", 5, 7, 1), group("b", 9, 0, 12), group("c", 0, 0, 0)]);
    expect([...hidden]).toEqual([]);
    expect(totals).toEqual({ cold: 7, hot: 13 });
  });

  it("of two small groups are shown as one", () => {
    const { hidden, together, totals } = disclose([group("a", 3, 4, 3), group("b", 2, 3, 1), group("c", 8, 9, 9)]);
    expect([...hidden].sort()).toEqual(["a", "b"]);
    expect(together).toEqual({ cold: 7, hot: 4 });
    expect(totals).toEqual({ cold: 16, hot: 13 });
  });

  it("hide the next smallest with a lone small one, which the total would tell otherwise", () => {
    const { hidden, together } = disclose([group("a", 4, 4, 1), group("b", 6, 5, 5), group("c", 8, 9, 9)]);
    expect([...hidden].sort()).toEqual(["a", "b"]);
    expect(together).toEqual({ cold: 9, hot: 6 });
  });

  it("give out no total where all of them are fewer than five people", () => {
    const { hidden, together, totals } = disclose([group("a", 1, 9, 0), group("b", 3, 5, 5), group("c", 0, 0, 0)]);
    expect([...hidden].sort()).toEqual(["a", "b"]);
    expect([together, totals]).toEqual(Array(2).fill({ cold: null, hot: null }));
  });

  it("give out no total that says of each hidden group that nobody, or one, was too hot", () => {
    const { totals } = disclose([group("a", 3, 4, 0), group("b", 3, 3, 0), group("c", 8, 9, 9)]);
    expect(totals).toEqual({ cold: 16, hot: null });
    expect(disclose([group("a", 3, 4, 1), group("b", 3, 3, 1), group("c", 8, 9, 9)]).totals.hot).toBeNull();
  });

  it("are summed over some groups only where neither these nor the others single a hidden one out", () => {
    const groups = [group("a", 3, 4, 3), group("b", 2, 3, 1), group("c", 8, 9, 9), group("d", 4, 6, 4)];
    const { sumOver } = disclose(groups);
    expect(sumOver(new Set(["c"]), "cold")).toBe(9);
    expect(sumOver(new Set(["a", "c"]), "cold")).toBeNull();
    expect(sumOver(new Set(["a", "b", "d"]), "cold")).toBe(13);
    expect(sumOver(new Set(["a", "b"]), "cold")).toBeNull();
  });

  it("need ten people where they are published", () => {
    expect(disclose([group("a", 9, 9, 9), group("b", 30, 9, 9)], LEAST_PEOPLE.publication).hidden.size).toBe(2);
  });
});

/** Every way to fill the hidden cells of both columns that agrees with what is known: all sums, and one report a group. */
function* fillings(
  known: readonly { of: readonly number[]; column: 0 | 1; sum: number }[],
  count: number,
  most: number,
) {
  const cells = Array<number>(2 * count).fill(0);
  function* fill(at: number): Generator<readonly number[]> {
    if (at === cells.length) {
      const rowsHold = Array.from({ length: count }).every(
        (_, i) => (cells[2 * i] as number) + (cells[2 * i + 1] as number) >= 1,
      );
      const sumsHold = known.every(
        ({ of, column, sum }) => of.reduce((total, i) => total + (cells[2 * i + column] as number), 0) === sum,
      );
      if (rowsHold && sumsHold) yield [...cells];
      return;
    }
    for (let value = 0; value <= most; value++) {
      cells[at] = value;
      yield* fill(at + 1);
    }
  }
  yield* fill(0);
}

it("no hidden count can be worked out from all that is shown, nor is a small group shown", () => {
  const anyGroup = fc
    .record({
      people: fc.integer({ min: 0, max: 8 }),
      cold: fc.integer({ min: 0, max: 3 }),
      hot: fc.integer({ min: 0, max: 3 }),
    })
    .map(({ people, cold, hot }) => {
      if (people === 0) return { people, cold: 0, hot: 0 };
      return cold + hot === 0 ? { people, cold: 1, hot } : { people, cold, hot };
    });
  let withHidden = 0;
  fc.assert(
    fc.property(fc.array(anyGroup, { minLength: 1, maxLength: 5 }), fc.nat(31), (drawn, chosen) => {
      const groups = drawn.map(({ people, cold, hot }, i) => group(String(i), people, cold, hot));
      const { hidden, totals, together, sumOver } = disclose(groups);
      for (const { key, people } of groups) if (people > 0 && people < 5) expect(hidden.has(key)).toBe(true);
      const rows = groups.flatMap(({ key, counts }, i) =>
        hidden.has(key) ? [{ key, counts, chosen: ((chosen >> i) & 1) === 1 }] : [],
      );
      if (rows.length === 0 || rows.length > 3) return;
      withHidden++;
      // What a reader knows of the hidden: the total less what is shown, the merged figure, and one sum over some of the groups.
      const shown = groups.filter(({ key }) => !hidden.has(key));
      const keys = new Set(groups.flatMap(({ key }, i) => (((chosen >> i) & 1) === 1 ? [key] : [])));
      const known = COLUMNS.flatMap((name, column) => {
        const shownSum = (of: readonly Group[]) => of.reduce((sum, { counts }) => sum + counts[name], 0);
        const all = rows.map((_, i) => i);
        const some = rows.flatMap((row, i) => (row.chosen ? [i] : []));
        const [total, merged, part] = [totals[name], together[name], sumOver(keys, name)];
        const facts = [];
        if (total !== null) facts.push({ of: all, sum: total - shownSum(shown) });
        if (merged !== null) facts.push({ of: all, sum: merged });
        if (part !== null && some.length > 0)
          facts.push({ of: some, sum: part - shownSum(shown.filter(({ key }) => keys.has(key))) });
        return facts.map((fact) => ({ ...fact, column: column as 0 | 1 }));
      });
      const seen = Array.from({ length: 2 * rows.length }, () => new Set<number>());
      for (const cells of fillings(known, rows.length, 5))
        for (const [i, value] of cells.entries()) seen[i]?.add(value);
      rows.forEach(({ counts }, i) => {
        expect(seen[2 * i]?.has(counts.cold)).toBe(true);
        expect([seen[2 * i]?.size, seen[2 * i + 1]?.size].every((size) => (size ?? 0) >= 2)).toBe(true);
      });
    }),
    { numRuns: 400, seed: 6 },
  );
  expect(withHidden).toBeGreaterThan(100);
});

it("people are counted by desk, and those without a desk as one", () => {
  expect(leastPeople([1, 1, 2, null, null])).toBe(3);
  expect(leastPeople([])).toBe(0);
});

it("says in words what is merged, what is withheld, and how many on a day were under five", () => {
  expect(mergedNote(disclose([group("a", 5, 7, 1)]))).toBe("");
  expect(mergedNote(disclose([group("a", 3, 4, 3), group("b", 2, 3, 1)]))).toMatch(
    /^Reports of 2 zones are not shown.*: together 7 cold and 4 hot\. Open/,
  );
  expect(mergedNote(disclose([group("a", 3, 4, 3)]))).toMatch(/nor is their sum/);
  expect([null, 4].map(countOrMerged)).toEqual(["merged", "4"]);
  expect([[], ["x", "x"], ["a", "b", "c", "d", null, "a"]].map(countOfDay)).toEqual(["0", "under 5", "6"]);
});
