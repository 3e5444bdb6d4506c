import { type ChangePointModel, modelledEnergyKwh, sensitivities } from "./change-point-model";
import type { QualifiedFit } from "./choose-model";
import { quadratic } from "./qualify-fit";

/**
 * The model with its cooling change point moved up by `riseK`: what the building would use if cooling began that much
 * warmer, slope and everything below the change point left as they are. Of 4P the bend moves along its left line. Null
 * for a model that has no cooling change point (2P and 3PH): it does not say what a setpoint is worth.
 */
export function withWarmerChangePoint(model: ChangePointModel, riseK: number): ChangePointModel | null {
  switch (model.kind) {
    case "3PC":
    case "5P":
      return { ...model, coolingChangeC: model.coolingChangeC + riseK };
    case "4P":
      return { ...model, base: model.base + model.leftSlope * riseK, changeC: model.changeC + riseK };
    default:
      return null;
  }
}

/** A cooling change point [°C] with the slope that begins there [kWh an interval and K]; null where the model has none. */
export function coolingWing(model: ChangePointModel): { slopeKwhPerK: number; changeC: number } | null {
  if (model.kind === "4P") return { slopeKwhPerK: model.rightSlope - model.leftSlope, changeC: model.changeC };
  return model.kind === "3PC" || model.kind === "5P"
    ? { slopeKwhPerK: model.coolingSlope, changeC: model.coolingChangeC }
    : null;
}

/**
 * Energy [kWh] that a change point moved up by `riseK` saves over intervals of the given outdoor temperatures:
 * slope · [CDD(T_cp) - CDD(T_cp + rise)], the whole curve and not its tangent (reference C-ii). The slope already holds
 * plant efficiency, outdoor air, sun and fans. Standard error by the covariance of the fit. Null as above.
 */
export function changePointSaving(
  { model, errors }: Pick<QualifiedFit, "model" | "errors">,
  outdoorC: ArrayLike<number>,
  riseK: number,
): { savingKwh: number; standardErrorKwh: number } | null {
  const warmer = withWarmerChangePoint(model, riseK);
  if (warmer === null) return null;
  let savingKwh = 0;
  const gradient = errors.covariance.map(() => 0);
  for (let i = 0; i < outdoorC.length; i++) {
    const tempC = outdoorC[i] as number;
    savingKwh += modelledEnergyKwh(model, tempC) - modelledEnergyKwh(warmer, tempC);
    const now = sensitivities(model, tempC);
    const then = sensitivities(warmer, tempC);
    // The moved bend of 4P stands on the left line, so its level depends on the left slope as well.
    if (model.kind === "4P") then[1] = (then[1] as number) + riseK;
    for (let k = 0; k < gradient.length; k++)
      gradient[k] = (gradient[k] as number) + (now[k] as number) - (then[k] as number);
  }
  return { savingKwh, standardErrorKwh: Math.sqrt(quadratic(errors.covariance, gradient)) };
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
