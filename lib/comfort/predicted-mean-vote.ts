import { type BrokenLimit, brokenLimits, type ComfortStandard } from "./input-limits";
import { predictedPercentDissatisfied } from "./percent-dissatisfied";
import { INSULATION_PER_CLO, type ThermalCondition, WATTS_PER_MET } from "./thermal-condition";
import { vapourPressurePa } from "./vapour-pressure";

/** A vote on the seven-point scale of thermal sensation that a heat balance predicts, and the share it leaves dissatisfied. */
export type PredictedVote =
  | { status: "ok"; pmv: number; ppdPct: number; clothingTempC: number }
  | { status: "outside-limits"; limits: BrokenLimit[] };

/** The method of ISO 7730 is stated for votes from -2 to +2. */
const MOST_VOTE = 2;

/** Predicted mean vote and percentage dissatisfied, refused outside what a standard's method holds for. */
export function predictedMeanVote(condition: ThermalCondition, standard: ComfortStandard = "ashrae-55"): PredictedVote {
  const limits = brokenLimits(condition, standard);
  if (limits.length > 0) return { status: "outside-limits", limits };
  const { pmv, clothingTempC } = voteOf(condition);
  if (standard === "iso-7730" && Math.abs(pmv) > MOST_VOTE)
    return {
      status: "outside-limits",
      limits: [{ what: "predicted mean vote", value: pmv, low: -MOST_VOTE, high: MOST_VOTE, unit: "" }],
    };
  return { status: "ok", pmv, ppdPct: predictedPercentDissatisfied(pmv), clothingTempC };
}

/**
 * The vote by Fanger's heat balance, equations 1 to 4 of ISO 7730:2005, without looking at its limits. The temperature of
 * the clothing is bisected: its balance rises without a kink that could hold it up, and the loose stop of the listing in
 * the standard leaves up to 0.003 of a vote.
 */
export function voteOf(condition: ThermalCondition): { pmv: number; clothingTempC: number } {
  const { airTempC, radiantTempC, relAirSpeedMps, relHumidityPct, clothingClo, externalWorkMet = 0 } = condition;
  const metabolicW = WATTS_PER_MET * condition.metabolicRateMet;
  const heatW = metabolicW - WATTS_PER_MET * externalWorkMet;
  const insulation = INSULATION_PER_CLO * clothingClo;
  const area = insulation <= 0.078 ? 1 + 1.29 * insulation : 1.05 + 0.645 * insulation;
  const vapourPa = vapourPressurePa(airTempC, relHumidityPct);

  const dryLossW = (clothingTempC: number): number => {
    const natural = 2.38 * Math.abs(clothingTempC - airTempC) ** 0.25;
    const forced = 12.1 * Math.sqrt(relAirSpeedMps);
    const radiated = 3.96e-8 * area * ((clothingTempC + 273) ** 4 - (radiantTempC + 273) ** 4);
    return radiated + area * Math.max(natural, forced) * (clothingTempC - airTempC);
  };
  const surplus = (clothingTempC: number): number =>
    clothingTempC - (35.7 - 0.028 * heatW - insulation * dryLossW(clothingTempC));
  const clothingTempC = bisect(surplus, Math.min(airTempC, radiantTempC) - 50, 100);

  const diffusionW = 0.00305 * (5733 - 6.99 * heatW - vapourPa);
  const sweatW = 0.42 * Math.max(0, heatW - WATTS_PER_MET);
  const breathingLatentW = 1.7e-5 * metabolicW * (5867 - vapourPa);
  const breathingDryW = 0.0014 * metabolicW * (34 - airTempC);
  const load = heatW - diffusionW - sweatW - breathingLatentW - breathingDryW - dryLossW(clothingTempC);
  return { pmv: (0.303 * Math.exp(-0.036 * metabolicW) + 0.028) * load, clothingTempC };
}

/** Where a function that rises through zero between two numbers does so. */
function bisect(rising: (x: number) => number, low: number, high: number): number {
  let from = low;
  let to = high;
  while (to - from > 1e-7) {
    const middle = (from + to) / 2;
    if (rising(middle) < 0) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
