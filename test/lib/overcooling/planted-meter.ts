import { chooseModel } from "@/lib/energy-model/change-point/choose-model";
import type { MeteredCooling, MeteredDays } from "@/lib/overcooling/assessment-input";
import { normalPair } from "@/lib/statistics/normal";
import { seededRandom } from "@/lib/statistics/random";
import { GREENSBORO_C } from "./offices";

/** Planted in each day type: energy of a day [kWh] at base, and for each kelvin of its mean above the change point. */
const PLANTED = {
  "occupied-days": { base: 1500, slopeKwhPerK: 60, changeC: 13, scatter: 60 },
  "other-days": { base: 600, slopeKwhPerK: 15, changeC: 16, scatter: 30 },
} as const;

/** An invented meter over Greensboro's typical year, with a model of each day type fitted to it; weeks of five days. */
export function plantedMeter(slopes = 1): MeteredCooling {
  const means = Array.from({ length: 365 }, (_, day) => {
    const hours = GREENSBORO_C.subarray(24 * day, 24 * day + 24);
    return hours.reduce((sum, each) => sum + each, 0) / 24;
  });
  const random = seededRandom(4);
  const days = (["occupied-days", "other-days"] as const).map((type): MeteredDays => {
    const { base, slopeKwhPerK, changeC, scatter } = PLANTED[type];
    const outdoorC = means.filter((_, day) => day % 7 < 5 === (type === "occupied-days"));
    const energyKwh = outdoorC.map(
      (each) => base + slopes * slopeKwhPerK * Math.max(0, each - changeC) + scatter * normalPair(random)[0],
    );
    const choice = chooseModel(
      { outdoorC: Float64Array.from(outdoorC), energyKwh: Float64Array.from(energyKwh) },
      "day",
    );
    if (choice.status !== "ok") throw new Error("the planted meter has no model");
    const { model, errors, goodness } = choice.chosen;
    return { type, fit: { model, errors }, readings: goodness.n, outdoorC, daysEach: outdoorC.map(() => 1) };
  });
  return {
    status: "ok",
    meter: "Main meter",
    href: "/energy-meter?meter=1",
    year: "the weather year of Greensboro",
    days,
  };
}
