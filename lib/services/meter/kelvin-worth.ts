import type { BuildingRow } from "@/db/queries/buildings";
import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import { MOST_EXTRAPOLATION } from "@/lib/energy-model/change-point/fit-rules";
import { energyPerKelvinWorking, moneyPerKelvinWorking } from "@/lib/energy-model/meter/kelvin-working";
import { type EnergyPerKelvin, energyPerKelvin, type TypeFit } from "@/lib/energy-model/meter/kelvin-worth";
import type { MeterFinding } from "@/lib/energy-model/meter/meter-finding";
import type { MeterModel } from "@/lib/energy-model/meter/meter-model";
import { leastDetectableFraction, reportingFactor } from "@/lib/energy-model/verification/savings-uncertainty";
import type { Range80, Working } from "@/lib/working/working";
import type { ModelYear } from "./model-year";
import { assumedShare, type SetpointShares } from "./setpoint-shares";

/** Seed of the draws: the same meter gives the same range on any machine. */
const SEED = 20_261_129;

export type KelvinWorth = {
  energy: EnergyPerKelvin;
  energyWorking: Working;
  /** Major units of the building's currency a year. */
  money: { stated: number; range: Range80; working: Working };
  /** What the year is called. */
  year: string;
};

/** A marginal price is worth all of itself. */
const ALL_OF_IT = { value: 1, low: 1, high: 1 };

const timesPrice = ({ p10, p50, p90 }: Range80, perKwh: number): Range80 => ({
  p10: p10 * perKwh,
  p50: p50 * perKwh,
  p90: p90 * perKwh,
});

/** What a kelvin of setpoint is worth by a model that may be used, and what has to be said of it. */
export function kelvinWorth(
  building: BuildingRow,
  meter: { name: string },
  model: MeterModel,
  given: { year: ModelYear; shares: SetpointShares; assumptions: readonly ResolvedAssumption[] },
): { worth: KelvinWorth | null; findings: MeterFinding[] } {
  const { year, shares, assumptions } = given;
  const fits = model.types.flatMap(({ type, choice }): TypeFit[] => {
    const typeYear = year.types.find((each) => each.type === type);
    return choice.status === "ok" && typeYear ? [{ fit: choice.chosen, year: typeYear }] : [];
  });
  const price = {
    perKwh: building.electricityPricePerKwh,
    share: building.electricityPriceKind === "blended" ? assumedShare(assumptions, "blended-price-energy-share") : null,
  };
  const energy = energyPerKelvin(fits, { ...shares, priced: price.share ?? ALL_OF_IT }, SEED);
  if (energy === null) {
    const evidence = { model: fits[0]?.fit.model.kind ?? "none" };
    return { worth: null, findings: [{ code: "no-cooling-change-point", severity: "disqualifies", evidence }] };
  }
  const about = { meter: meter.name, year: year.name, href: "/energy-meter" };
  const energyWorking = energyPerKelvinWorking(energy, fits, shares, about);
  const { perKwh, share } = price;
  const { p10, p90 } = energy.range;
  const working = moneyPerKelvinWorking(
    energyWorking,
    { low: p10, high: p90 },
    { perKwh, currency: building.currency, share },
  );
  const money = { stated: working.result.value, range: timesPrice(energy.pricedRange, perKwh), working };
  return {
    worth: { energy, energyWorking, money, year: year.name },
    findings: [...beyondFitted(fits), ...belowNoise(model, energy)],
  };
}

/** How far a year goes beyond the temperatures of the fits, when by more than a tenth of their span. */
function beyondFitted(fits: readonly TypeFit[]): MeterFinding[] {
  let most = 0;
  for (const { fit, year } of fits) {
    const { lowC, highC } = fit.fittedC;
    const beyondK = Math.max(Math.max(...year.outdoorC) - highC, lowC - Math.min(...year.outdoorC));
    if (beyondK > MOST_EXTRAPOLATION * (highC - lowC)) most = Math.max(most, beyondK);
  }
  return most > 0 ? [{ code: "beyond-fitted-temperatures", severity: "caution", evidence: { beyondK: most } }] : [];
}

/** Says so when a year of this meter could not show a saving of one kelvin (Guideline 14: FSU above 50 % at 68 %). */
function belowNoise(model: MeterModel, energy: EnergyPerKelvin): MeterFinding[] {
  const main = model.types[0];
  if (main?.choice.status !== "ok" || !(energy.savingKwh > 0)) return [];
  const { cvRmse, n, effectiveN, p } = main.choice.chosen.goodness;
  const byBill = model.length === "bill";
  const days = model.types.flatMap((each) => each.readings);
  const usedKwh = (days.reduce((sum, each) => sum + each.energyKwh, 0) / days.length) * 365;
  const savedFraction = energy.savingKwh / usedKwh;
  const leastFraction = leastDetectableFraction({
    cvRmse,
    n,
    effectiveN,
    p,
    m: byBill ? 12 : 365,
    savedFraction,
    level: 0.68,
    form: byBill ? "none" : "effective-count",
    factor: reportingFactor(byBill ? "bill" : "day", 12),
  });
  if (savedFraction >= leastFraction) return [];
  return [{ code: "saving-below-noise", severity: "caution", evidence: { savedFraction, leastFraction } }];
}
