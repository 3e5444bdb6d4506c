import { expect, test } from "vitest";
import {
  energyPerKelvinWorking,
  moneyPerKelvinWorking,
  type StatedShare,
} from "@/lib/energy-model/meter/kelvin-working";
import { energyPerKelvin, type TypeFit } from "@/lib/energy-model/meter/kelvin-worth";
import { modelOfDays } from "@/lib/energy-model/meter/meter-model";
import { assumptionsUsed, type Term, type Working } from "@/lib/working/working";
import { DAILY_MEANS_C, syntheticDays } from "./synthetic-meter";

const share = (value: number, low: number, high: number, assumptionId?: string): StatedShare => ({
  value,
  low,
  high,
  label: "a share",
  origin: "default",
  source: "test",
  assumptionId,
});
const SHARES = {
  area: share(1, 1, 1),
  cooling: share(0.8, 0.6, 1, "cooling-share"),
  sensible: share(0.75, 0.65, 0.85, "sensible-share"),
  priced: share(1, 1, 1),
};

const model = modelOfDays(
  syntheticDays({ base: 1900, coolingSlope: 73, coolingChangeC: 12, noiseKwh: 90, idleKwh: 800 }),
);
const fits: TypeFit[] = model.types.flatMap(({ type, choice, readings }) => {
  if (choice.status !== "ok") return [];
  const outdoorC = Float64Array.from(readings, (each) => each.outdoorC);
  return [{ fit: choice.chosen, year: { type, outdoorC, daysEach: new Float64Array(outdoorC.length).fill(1) } }];
});

const worth = energyPerKelvin(fits, SHARES, 1);
if (!worth) throw new Error("nothing worth");

test("a kelvin is worth slope times the degree-days that its change point gives up", () => {
  const chosen = fits[0]?.fit.model;
  if (chosen?.kind !== "3PC") throw new Error("not a 3PC");
  const days = [...(fits[0]?.year.outdoorC ?? [])];
  const degreeDays = (from: number): number => days.reduce((sum, each) => sum + Math.max(0, each - from), 0);
  const { coolingSlope, coolingChangeC } = chosen;
  const byHand = coolingSlope * (degreeDays(coolingChangeC) - degreeDays(coolingChangeC + 0.8 * 0.75));
  expect(worth.savingKwh).toBeCloseTo(byHand, 6);
  expect(worth.response).toBeCloseTo(0.6, 12);
  expect(worth.coolingFraction).toBeCloseTo(byHand / (coolingSlope * degreeDays(coolingChangeC)), 9);
});

test("its range holds the planted saving, and grows with what is not known of the shares", () => {
  const occupied = DAILY_MEANS_C.filter((_, i) => [0, 1, 2, 3, 4].includes((i + 2) % 7));
  const planted = 73 * occupied.reduce((sum, t) => sum + Math.max(0, t - 12) - Math.max(0, t - 12.6), 0);
  expect(worth.range.p10).toBeLessThan(planted);
  expect(worth.range.p90).toBeGreaterThan(planted);
  const known = energyPerKelvin(
    fits,
    { ...SHARES, cooling: share(0.8, 0.8, 0.8), sensible: share(0.75, 0.75, 0.75) },
    1,
  );
  if (!known) throw new Error("nothing worth");
  expect(known.standardErrorKwh).toBeCloseTo(known.fitErrorKwh, 9);
  expect(worth.standardErrorKwh).toBeGreaterThan(3 * known.standardErrorKwh);
  // P10 to P90 of a normal is 2.563 standard errors wide.
  expect((known.range.p90 - known.range.p10) / (2.563 * known.fitErrorKwh)).toBeCloseTo(1, 1);
  expect((worth.range.p90 - worth.range.p10) / (2.563 * worth.standardErrorKwh)).toBeCloseTo(1, 0);
});

test("the same seed gives the same range, and no cooling change point no worth", () => {
  expect(energyPerKelvin(fits, SHARES, 1)).toEqual(worth);
  expect(energyPerKelvin([], SHARES, 1)).toBeNull();
});

const about = { meter: "Main Meter", year: "2025", href: "/energy-meter" };
const energy = energyPerKelvinWorking(worth, fits, SHARES, about);

test("the working adds up at every level, and names what was assumed", () => {
  const money = moneyPerKelvinWorking(
    energy,
    { low: worth.range.p10, high: worth.range.p90 },
    {
      perKwh: 0.14,
      currency: "USD",
      share: share(0.8, 0.7, 1, "blended-price-energy-share"),
    },
  );
  expect(money.result.value).toBeCloseTo(worth.savingKwh * 0.14 * 0.8, 9);
  expect(assumptionsUsed(money).sort()).toEqual(["blended-price-energy-share", "cooling-share", "sensible-share"]);
  const value = (working: Working, symbol: string): number =>
    working.terms.find((term) => term.symbol === symbol)?.value ?? Number.NaN;
  let checked = 0;
  const visit = (working: Working): void => {
    const of = (symbol: string): number => value(working, symbol);
    const [, right = ""] = working.formula.split(" = ");
    if (right === "b * (D_1 - D_2)") expect(of("b") * (of("D_1") - of("D_2"))).toBeCloseTo(working.result.value, 6);
    else if (right === "a * s_c * s_s") expect(of("a") * of("s_c") * of("s_s")).toBeCloseTo(working.result.value, 12);
    else if (right === "E_o") expect(of("E_o")).toBeCloseTo(working.result.value, 9);
    else if (right === "E_K * p * w") expect(of("E_K") * of("p") * of("w")).toBeCloseTo(working.result.value, 9);
    else expect(right).toMatch(/^sum\(max\(0, T_o - T_cp/);
    checked++;
    for (const term of working.terms) if (term.working) same(term, term.working);
  };
  const same = (term: Term, working: Working): void => {
    expect(working.result.value).toBe(term.value);
    visit(working);
  };
  visit(money);
  expect(checked).toBe(6);
});
