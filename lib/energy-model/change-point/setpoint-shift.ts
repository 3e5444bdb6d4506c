import type { OutdoorHours } from "../outdoor-hours";
import type { ChangePointModel } from "./change-point-model";
import type { QualifiedFit } from "./choose-model";
import { quadratic } from "./qualify-fit";

/**
 * A cooling change point [°C] with the slope that begins there [kWh an interval and K] and where both stand among the
 * parameters; null where the model has none. Of 4P whose left
 * line rises as well (fans, an economizer) the slope is what the bend adds to it: what goes on below the change point stays.
 */
export function coolingWing(model: ChangePointModel): CoolingWing | null {
  switch (model.kind) {
    case "3PC":
      return { slopeKwhPerK: model.coolingSlope, changeC: model.coolingChangeC, slopeWeights: [0, 1, 0], changeAt: 2 };
    case "4P":
      return {
        slopeKwhPerK: model.rightSlope - Math.max(0, model.leftSlope),
        changeC: model.changeC,
        slopeWeights: [0, model.leftSlope > 0 ? -1 : 0, 1, 0],
        changeAt: 3,
      };
    case "5P":
      return {
        slopeKwhPerK: model.coolingSlope,
        changeC: model.coolingChangeC,
        slopeWeights: [0, 0, 0, 1, 0],
        changeAt: 4,
      };
    default:
      return null;
  }
}

export type CoolingWing = {
  slopeKwhPerK: number;
  changeC: number;
  /** The slope as a sum of the parameters, and the position of the change point among them. */
  slopeWeights: readonly number[];
  changeAt: number;
};

/**
 * Energy [kWh] that a change point moved up by `riseK` saves over a year of intervals:
 * slope · [CDD(T_cp) - CDD(T_cp + rise)], the whole curve and not its tangent (reference C-ii). The slope already holds
 * plant efficiency, outdoor air, sun and fans. Standard error by the covariance of the fit. `year` has the intervals'
 * mean temperatures, each weighted by the intervals that it stands for. Null for a model without a cooling change point
 * (2P and 3PH): it does not say what a setpoint is worth.
 */
export function changePointSaving(
  { model, errors }: Pick<QualifiedFit, "model" | "errors">,
  year: Pick<OutdoorHours, "degreeHours" | "hoursAtOrAbove">,
  riseK: number,
): { savingKwh: number; standardErrorKwh: number } | null {
  const wing = coolingWing(model);
  if (wing === null) return null;
  const { slopeKwhPerK, changeC, slopeWeights, changeAt } = wing;
  const degreesLess = year.degreeHours(changeC) - year.degreeHours(changeC + riseK);
  const passed = year.hoursAtOrAbove(changeC) - year.hoursAtOrAbove(changeC + riseK);
  const gradient = slopeWeights.map((weight, k) => (k === changeAt ? -slopeKwhPerK * passed : weight * degreesLess));
  return {
    savingKwh: slopeKwhPerK * degreesLess,
    standardErrorKwh: Math.sqrt(quadratic(errors.covariance, gradient)),
  };
}

/**
 * Share of a setpoint change that reached the change point, measured where a building's setpoint was changed and its
 * meter was fitted before and after: (T_cp,after - T_cp,before) / dT_set, with its standard error.
 */
export function measuredSetpointResponse(
  before: { changeC: number; standardErrorK: number },
  after: { changeC: number; standardErrorK: number },
  setpointRiseK: number,
): { response: number; standardError: number } {
  if (setpointRiseK === 0) throw new RangeError("a setpoint that did not change measures nothing");
  const standardErrorK = Math.hypot(before.standardErrorK, after.standardErrorK);
  return {
    response: (after.changeC - before.changeC) / setpointRiseK,
    standardError: standardErrorK / Math.abs(setpointRiseK),
  };
}
