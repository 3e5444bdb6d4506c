import { modelledEnergyKwh, PARAMETERS } from "@/lib/energy-model/change-point/change-point-model";
import { chooseModel } from "@/lib/energy-model/change-point/choose-model";
import { fractionalSavingsUncertainty } from "@/lib/energy-model/verification/savings-uncertainty";
import { effectiveCount, lagOneCorrelation } from "@/lib/statistics/autocorrelation";
import { mean } from "@/lib/statistics/moments";
import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";
import type { Working } from "@/lib/working/working";
import type { Proof } from "../verification-result";
import {
  avoidedWorking,
  type BaselineFacts,
  halfWidthWorking,
  leastShareWorking,
  type ProofMeter,
} from "./energy-working";
import { verdictOf } from "./proof-of";

/** One occupied day of the meter. */
export type EnergyDay = { outdoorC: number; energyKwh: number };

export const ENERGY_CONFIDENCE = 0.9;

/** What a meter can show before anyone waits: the least saved share that stands out at 90 %, with so many days after. */
export type Detectability =
  | { status: "ok"; leastFraction: number; model: string; cvRmse: number; days: number; working: Working }
  | { status: "no-model" };

type Baseline = BaselineFacts & {
  predict: (outdoorC: number) => number;
  halfFraction: (m: number) => number;
};

/** A change-point model of the days before; null where no kind may be used. */
function baselineOf(before: readonly EnergyDay[]): Baseline | null {
  const outdoorC = Float64Array.from(before, (each) => each.outdoorC);
  const energyKwh = Float64Array.from(before, (each) => each.energyKwh);
  const choice = chooseModel({ outdoorC, energyKwh }, "day");
  if (choice.status !== "ok") return null;
  const { model, goodness } = choice.chosen;
  const predict = (tempC: number): number => modelledEnergyKwh(model, tempC);
  const residuals = before.map((each) => each.energyKwh - predict(each.outdoorC));
  const n = before.length;
  const lagOne = lagOneCorrelation(residuals);
  const effectiveN = effectiveCount(n, lagOne);
  return {
    predict,
    model,
    cvRmse: goodness.cvRmse,
    n,
    effectiveN,
    lagOne,
    t: studentTwoSidedQuantile(ENERGY_CONFIDENCE, n - PARAMETERS[model.kind]),
    // With a saved share of 1 the fractional uncertainty is the half-width as a share of the adjusted baseline.
    halfFraction: (m) =>
      fractionalSavingsUncertainty({
        cvRmse: goodness.cvRmse,
        n,
        effectiveN,
        p: PARAMETERS[model.kind],
        m,
        savedFraction: 1,
        level: ENERGY_CONFIDENCE,
        form: "effective-count",
      }),
  };
}

/** Least share that can be shown: its uncertainty is half of it (Guideline 14). */
export function detectability(before: readonly EnergyDay[], daysAfter: number): Detectability {
  const baseline = baselineOf(before);
  if (!baseline) return { status: "no-model" };
  const { model, cvRmse, n } = baseline;
  const leastFraction = baseline.halfFraction(daysAfter) / 0.5;
  const working = leastShareWorking(baseline, daysAfter, ENERGY_CONFIDENCE, leastFraction);
  return { status: "ok", leastFraction, model: model.kind, cvRmse, days: n, working };
}

/**
 * Avoided energy: what the model of the days before makes of the weather after, less what the meter read, with the
 * fractional savings uncertainty of Guideline 14 and one correction for autocorrelation. Null where there is no model.
 */
export function energyProof(
  before: readonly EnergyDay[],
  after: readonly EnergyDay[],
  expectedKwhPerDay: number,
  meter: ProofMeter,
): Proof | null {
  const baseline = baselineOf(before);
  if (!baseline || after.length === 0) return null;
  const adjusted = mean(after.map((each) => baseline.predict(each.outdoorC)));
  const measured = mean(after.map((each) => each.energyKwh));
  const avoided = adjusted - measured;
  const half = baseline.halfFraction(after.length) * adjusted;
  const verdict = verdictOf(avoided - half, avoided + half, { sign: 1, expected: expectedKwhPerDay });
  const worked = {
    baseline,
    adjustedKwh: adjusted,
    measuredKwh: measured,
    daysAfter: after.length,
    meanOutdoorC: mean(after.map((each) => each.outdoorC)),
    halfKwh: half,
    confidence: ENERGY_CONFIDENCE,
    meter,
  };
  const kwh = (value: number): string => Math.round(value).toLocaleString("en").replace("-", "\u2212");
  return {
    id: "energy",
    label: "Avoided electricity of an occupied day, by the meter",
    unit: "kWh",
    before: adjusted,
    after: measured,
    change: avoided,
    low: avoided - half,
    high: avoided + half,
    confidence: ENERGY_CONFIDENCE,
    verdict,
    workings: [avoidedWorking(worked), halfWidthWorking(worked)],
    sentence: `The ${baseline.model.kind} model of ${baseline.n} days before makes ${kwh(adjusted)} kWh of an occupied day after, the meter read ${kwh(measured)} over ${after.length} days: ${kwh(avoided)} kWh avoided (90 % interval ${kwh(avoided - half)} to ${kwh(avoided + half)}), ${kwh(expectedKwhPerDay)} expected. The least that these days can show is ${kwh(2 * half)} kWh a day, ${((200 * half) / adjusted).toFixed(1)} %.`,
  };
}
