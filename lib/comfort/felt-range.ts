import { relativeAirSpeed } from "./air-speed";
import type { BrokenLimit } from "./input-limits";
import { predictedMeanVote } from "./predicted-mean-vote";

/** A value that is known no better than this. */
export type Spread = { low: number; middle: number; high: number };

/** What is known of a person's surroundings and of the person. */
export type FeltInputs = {
  airTempC: Spread;
  /** Surfaces over the air [K]. */
  radiantOffsetK: Spread;
  airSpeedMps: Spread;
  relHumidityPct: Spread;
  metabolicRateMet: Spread;
  clothingClo: Spread;
};

/** Predicted votes that what is known allows, coolest first. */
export type FeltRange =
  | { status: "ok"; pmv: Spread; ppdPct: Spread }
  | { status: "outside-limits"; limits: BrokenLimit[] };

/**
 * Range of the predicted vote by ISO 7730's method: it rises with each input but the speed of the air, so that its ends
 * stand at the inputs' ends. All at their ends at once is wider than likely, and says so much more than a single number.
 */
export function feltRange(inputs: FeltInputs): FeltRange {
  const voteAt = (at: keyof Spread) => {
    const against = at === "low" ? "high" : at === "high" ? "low" : "middle";
    const met = inputs.metabolicRateMet[at];
    return predictedMeanVote(
      {
        airTempC: inputs.airTempC[at],
        radiantTempC: inputs.airTempC[at] + inputs.radiantOffsetK[at],
        relAirSpeedMps: relativeAirSpeed(inputs.airSpeedMps[against], met),
        relHumidityPct: inputs.relHumidityPct[at],
        metabolicRateMet: met,
        clothingClo: inputs.clothingClo[at],
      },
      "ashrae-55",
    );
  };
  const [low, middle, high] = [voteAt("low"), voteAt("middle"), voteAt("high")];
  if (low.status !== "ok") return low;
  if (middle.status !== "ok") return middle;
  if (high.status !== "ok") return high;
  const crossesNeutral = low.pmv < 0 && high.pmv > 0;
  return {
    status: "ok",
    pmv: { low: low.pmv, middle: middle.pmv, high: high.pmv },
    ppdPct: {
      low: crossesNeutral ? 5 : Math.min(low.ppdPct, high.ppdPct),
      middle: middle.ppdPct,
      high: Math.max(low.ppdPct, high.ppdPct),
    },
  };
}

/** Where a vote of the seven-point scale lies beside a range: a vote stands for half a step to either side. */
export function besideRange(vote: number, { low, high }: Spread): "colder" | "within" | "warmer" {
  if (vote + 0.5 < low) return "colder";
  return vote - 0.5 > high ? "warmer" : "within";
}
