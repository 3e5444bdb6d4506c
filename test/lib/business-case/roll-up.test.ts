import { expect, test } from "vitest";
import { type RollUpEntry, rollUp } from "@/lib/business-case/roll-up";

/** 0 to 1000 in steps of 1, rising: shares its order with every other list made so. */
const RISING = Array.from({ length: 1001 }, (_, i) => i);

const entry = (changes: Partial<RollUpEntry>): RollUpEntry => ({
  buildingId: 1,
  buildingName: "Example Hall",
  currency: "USD",
  proposalId: 1,
  title: "warmer",
  stage: "proposed",
  draws: { saving: RISING, electricKwh: RISING, heatKwh: RISING, emissionsKgCo2: RISING },
  verification: "",
  zoneIds: [],
  ...changes,
});

test("what buildings share moves together; as if they shared nothing the range of the sum is narrower", () => {
  const { currencies } = rollUp([1, 2, 3, 4].map((id) => entry({ buildingId: id, proposalId: id })));
  const range = currencies[0]?.total.proposed?.range;
  // Together: four times the quantiles 100, 500 and 900 of one.
  expect(range?.together).toEqual({ p10: 400, p50: 2000, p90: 3600 });
  // Apart, by hand: variance of a sum of four even ones 4 · 1001²/12, so u = 578; normal P10-P90 about ± 1.28 u = ± 740.
  const width = (range?.apart.p90 ?? 0) - (range?.apart.p10 ?? 0);
  expect(Math.abs(width - 1480)).toBeLessThan(130);
  expect(Math.abs((range?.apart.p50 ?? 0) - 2000)).toBeLessThan(80);
});

test("proposals of one building always move together", () => {
  const { currencies } = rollUp([entry({ proposalId: 1 }), entry({ proposalId: 2 })]);
  const total = currencies[0]?.total.proposed;
  expect(total?.count).toBe(2);
  expect(total?.range.apart).toEqual(total?.range.together);
  expect(currencies[0]?.rows[0]?.stages.proposed).toEqual({ count: 2, range: { p10: 200, p50: 1000, p90: 1800 } });
});

test("currencies stay apart, kilowatt-hours of all buildings are one sum", () => {
  const { currencies, energy } = rollUp([entry({}), entry({ buildingId: 2, currency: "EUR" })]);
  expect(currencies.map(({ currency, rows }) => [currency, rows.length])).toEqual([
    ["EUR", 1],
    ["USD", 1],
  ]);
  expect(energy.electricKwh.proposed?.range.together.p50).toBe(1000);
});

test("a stage without a proposal has no figure, not a zero", () => {
  const { currencies } = rollUp([entry({ stage: "approved" })]);
  expect(currencies[0]?.total.proposed).toBeNull();
  expect(currencies[0]?.total.verified).toBeNull();
  expect(rollUp([]).currencies).toEqual([]);
  expect(rollUp([]).energy.heatKwh).toEqual({ proposed: null, approved: null, verified: null });
});

test("proposals that touch the same zones of a building are named", () => {
  const { overlaps } = rollUp([
    entry({ zoneIds: [1, 2, 3], title: "first" }),
    entry({ proposalId: 2, zoneIds: [2, 3, 4], title: "second" }),
    entry({ buildingId: 2, zoneIds: [2], title: "elsewhere" }),
  ]);
  expect(overlaps).toEqual([{ buildingName: "Example Hall", first: "first", second: "second", zones: 2 }]);
});
