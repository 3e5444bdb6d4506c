import { coolingEffect } from "./cooling-effect";
import { brokenLimits } from "./input-limits";
import { type PredictedVote, predictedMeanVote } from "./predicted-mean-vote";
import type { ThermalCondition } from "./thermal-condition";
import { STILL_AIR_MPS } from "./two-node";

/** A vote under moving air, by either way of counting what the air is worth. */
export type VoteRange = { low: PredictedVote; high: PredictedVote };

/**
 * Predicted vote as ASHRAE 55 has it above 0.1 m/s: that of still air cooler by the cooling effect. The two ways of
 * counting it give a range; in still air both are the same.
 */
export function voteInMovingAir(condition: ThermalCondition): VoteRange {
  const refused = brokenLimits(condition, "ashrae-55");
  if (refused.length > 0) {
    const outside: PredictedVote = { status: "outside-limits", limits: refused };
    return { low: outside, high: outside };
  }
  const { lowK, highK } = coolingEffect(condition);
  const inStillAir = (lessK: number): PredictedVote =>
    predictedMeanVote({
      ...condition,
      airTempC: condition.airTempC - lessK,
      radiantTempC: condition.radiantTempC - lessK,
      relAirSpeedMps: Math.min(STILL_AIR_MPS, condition.relAirSpeedMps),
    });
  return { low: inStillAir(highK), high: inStillAir(lowK) };
}
