import type { Finding } from "@/lib/findings/finding";
import { studentTwoSided } from "@/lib/statistics/student-t";
import { type ChangePointModel, PARAMETERS } from "./change-point-model";
import type { EnergyReadings } from "./fit-model";
import {
  DAYS_EACH,
  LEAST_SLOPE_DAYS,
  LEAST_SLOPE_DEGREE_DAYS,
  LEAST_TEMP_SPAN_K,
  MOST_CV_RMSE,
  MOST_SLOPE_CHANCE,
  type ReadingLength,
} from "./fit-rules";
import type { Goodness } from "./goodness";
import type { ParameterErrors } from "./parameter-errors";

export type FitFindingCode =
  | "temperature-span-short"
  | "slope-wrong-sign"
  | "slope-days-few"
  | "slope-not-significant"
  | "parameters-not-determined"
  | "cv-rmse-high";

export type FitFinding = Finding<FitFindingCode>;

/** A slope that a model claims, as it should be above 0, with the readings it rests on. */
type Slope = {
  side: "cooling" | "heating";
  perK: number;
  varianceWeights: readonly number[];
  distanceK(tempC: number): number;
};

/** Reasons why a fit may not be used; none when it may. All of them are given, not only the first. */
export function fitFaults(
  model: ChangePointModel,
  fit: {
    goodness: Goodness;
    errors: ParameterErrors | null;
    fittedC: { lowC: number; highC: number };
    length: ReadingLength;
  },
  { outdoorC }: EnergyReadings,
): FitFinding[] {
  const { goodness, errors, fittedC, length } = fit;
  const faults: FitFinding[] = [];
  const stop = (code: FitFindingCode, evidence: FitFinding["evidence"]): void => {
    faults.push({ code, severity: "disqualifies", evidence: { model: model.kind, ...evidence } });
  };
  const spanK = fittedC.highC - fittedC.lowC;
  if (spanK < LEAST_TEMP_SPAN_K) stop("temperature-span-short", { spanK, leastK: LEAST_TEMP_SPAN_K });
  for (const slope of slopesOf(model)) {
    const { side, perK } = slope;
    if (!(perK > 0)) {
      stop("slope-wrong-sign", { side, slopeKwhPerK: perK });
      continue;
    }
    const { days, degreeDays } = degreeDaysOf(slope, outdoorC, DAYS_EACH[length]);
    if (days < LEAST_SLOPE_DAYS || degreeDays < LEAST_SLOPE_DEGREE_DAYS)
      stop("slope-days-few", {
        side,
        days,
        degreeDays,
        leastDays: LEAST_SLOPE_DAYS,
        leastDegreeDays: LEAST_SLOPE_DEGREE_DAYS,
      });
    if (errors === null) continue;
    const error = Math.sqrt(quadratic(errors.covariance, slope.varianceWeights));
    const df = goodness.effectiveN - PARAMETERS[model.kind];
    const chance = df > 0 ? studentTwoSided(perK / error, df) : 1;
    if (chance > MOST_SLOPE_CHANCE)
      stop("slope-not-significant", {
        side,
        slopeKwhPerK: perK,
        standardErrorKwhPerK: error,
        chance,
        most: MOST_SLOPE_CHANCE,
      });
  }
  if (errors === null) stop("parameters-not-determined", {});
  const mostCvRmse = MOST_CV_RMSE[length];
  if (goodness.cvRmse > mostCvRmse)
    stop("cv-rmse-high", { cvRmse: goodness.cvRmse, most: mostCvRmse, reading: length });
  return faults;
}

/** Slopes by side, each positive when it is as the side's name says. Of 4P it is what the bend adds to a rising left line. */
function slopesOf(model: ChangePointModel): Slope[] {
  const cooling = (changeC: number) => (tempC: number) => Math.max(0, tempC - changeC);
  const heating = (changeC: number) => (tempC: number) => Math.max(0, changeC - tempC);
  switch (model.kind) {
    case "2P": {
      const sign = model.slope < 0 ? -1 : 1;
      return [
        {
          side: sign < 0 ? "heating" : "cooling",
          perK: Math.abs(model.slope),
          varianceWeights: [0, 1],
          // It has no change point to be beyond: every reading bears on its slope.
          distanceK: () => LEAST_SLOPE_DEGREE_DAYS,
        },
      ];
    }
    case "3PC":
      return [
        {
          side: "cooling",
          perK: model.coolingSlope,
          varianceWeights: [0, 1, 0],
          distanceK: cooling(model.coolingChangeC),
        },
      ];
    case "3PH":
      return [
        {
          side: "heating",
          perK: model.heatingSlope,
          varianceWeights: [0, 1, 0],
          distanceK: heating(model.heatingChangeC),
        },
      ];
    case "4P":
      return [
        {
          side: "cooling",
          perK: model.rightSlope - Math.max(0, model.leftSlope),
          varianceWeights: [0, model.leftSlope > 0 ? -1 : 0, 1, 0],
          distanceK: cooling(model.changeC),
        },
      ];
    case "5P":
      return [
        {
          side: "heating",
          perK: model.heatingSlope,
          varianceWeights: [0, 1, 0, 0, 0],
          distanceK: heating(model.heatingChangeC),
        },
        {
          side: "cooling",
          perK: model.coolingSlope,
          varianceWeights: [0, 0, 0, 1, 0],
          distanceK: cooling(model.coolingChangeC),
        },
      ];
  }
}

function degreeDaysOf(
  { distanceK }: Slope,
  outdoorC: Float64Array,
  daysEach: number,
): { days: number; degreeDays: number } {
  let readings = 0;
  let sum = 0;
  for (const tempC of outdoorC) {
    const distance = distanceK(tempC);
    if (distance > 0) readings++;
    sum += distance;
  }
  return { days: readings * daysEach, degreeDays: sum * daysEach };
}

/** wᵀ C w: the variance of a sum of parameters. */
export function quadratic(covariance: ParameterErrors["covariance"], weights: readonly number[]): number {
  let sum = 0;
  for (const [i, row] of covariance.entries())
    for (const [j, each] of row.entries()) sum += each * (weights[i] ?? 0) * (weights[j] ?? 0);
  return Math.max(0, sum);
}
