import { expect, test } from "vitest";
import { billedKwMonths, coolingPeakMonths, savedKwMonths } from "@/lib/finance/billed-demand";
import { hoursByBlock, hoursByPeriod, lastKwhPrice, type TariffPeriod } from "@/lib/finance/tariff";
import { loadCheckValues } from "../../support/check-values";

const onPeak: TariffPeriod = {
  name: "on-peak",
  pricePerKwh: 0.3,
  months: [6, 7],
  weekdays: [1, 2, 3, 4, 5],
  startMinute: 12 * 60 + 30,
  endMinute: 18 * 60,
};
const hour = (month: number, weekday: number, minute: number, weight = 1) => ({ month, weekday, minute, weight });
const table = (rows: ReturnType<typeof hour>[]) => ({
  month: rows.map((each) => each.month),
  weekday: rows.map((each) => each.weekday),
  minute: rows.map((each) => each.minute),
  weight: rows.map((each) => each.weight),
});

// By hand: 12:00 has half an hour in the period, 13:00 all; Saturday and May none; a weight of 0.5 counts half.
test("hours fall to the period of their month, weekday and clock, in parts where it begins inside one", () => {
  const hours = table([hour(6, 1, 720), hour(6, 1, 780), hour(6, 6, 780), hour(5, 1, 780), hour(7, 5, 1020, 0.5)]);
  expect(hoursByPeriod(hours, [onPeak], 0.1)).toEqual([
    { label: "on-peak", hours: 2, pricePerKwh: 0.3 },
    { label: "all other hours", hours: 2.5, pricePerKwh: 0.1 },
  ]);
});

test("of periods that overlap the first counts, and no hour counts twice", () => {
  const mid = { ...onPeak, name: "mid-peak", pricePerKwh: 0.2, startMinute: 600, endMinute: 1200 };
  const found = hoursByPeriod(table([hour(6, 1, 720), hour(6, 1, 660)]), [onPeak, mid], 0.1);
  expect(found.map((each) => [each.label, each.hours])).toEqual([
    ["on-peak", 0.5],
    ["mid-peak", 1.5],
  ]);
});

test("a saved kWh comes off the top block of its month", () => {
  const blocks = [
    { upToKwh: 20_000, pricePerKwh: 0.12 },
    { upToKwh: null, pricePerKwh: 0.08 },
  ];
  expect([0, 20_000, 20_001].map((kwh) => lastKwhPrice(blocks, kwh))).toEqual([0.12, 0.12, 0.08]);
  const kwh = Array.from({ length: 12 }, (_, k) => (k === 6 ? 30_000 : 10_000));
  expect(hoursByBlock(table([hour(6, 1, 720), hour(7, 1, 720), hour(7, 2, 720)]), blocks, kwh)).toEqual([
    { label: "June", hours: 1, pricePerKwh: 0.12 },
    { label: "July", hours: 2, pricePerKwh: 0.08 },
  ]);
});

type Bill = { kW: number[]; demand_rate: number; ratchet: number };
test.each(loadCheckValues<Bill>("finance/blended-and-marginal").cases)(
  "the ratchet bills winter at a share of summer's peak: $name",
  ({ inputs, expected, tolerance }) => {
    const more = billedKwMonths(inputs.kW, inputs.ratchet) - billedKwMonths(inputs.kW, 0);
    const billed = (expected.ratchet_bill as number) - (expected.annual_bill as number);
    expect(Math.abs(more * inputs.demand_rate - billed)).toBeLessThanOrEqual(tolerance.ratchet_bill as number);
  },
);

// By hand: peaks 100 in winter, 200 in three summer months, ratchet 80 %: winter is billed 160 and falls to 152.
test("a lower summer peak counts in summer, and through the ratchet in the other nine months", () => {
  const peaksKw = [100, 100, 100, 100, 100, 200, 200, 200, 100, 100, 100, 100];
  const year = { peaksKw, ratchetFraction: 0.8, coolingMonths: [5, 6, 7] };
  expect(savedKwMonths(year, 10)).toBeCloseTo(3 * 10 + 9 * 8, 9);
  expect(savedKwMonths({ ...year, ratchetFraction: 0 }, 10)).toBeCloseTo(30, 9);
  // A winter month as high as summer holds the ratchet where it is.
  const winterHigh = [200, ...peaksKw.slice(1)];
  expect(savedKwMonths({ ...year, peaksKw: winterHigh }, 10)).toBeCloseTo(30, 9);
});

test("cooling months are those of the highest peaks that have a cooling season", () => {
  const peaks = [500, 1, 1, 1, 10, 30, 50, 40, 20, 1, 1, 1];
  const season = [0, 0, 0, 0, 5, 9, 9, 9, 9, 2, 0, 0];
  expect(coolingPeakMonths(peaks, season, 3)).toEqual([5, 6, 7]);
});
