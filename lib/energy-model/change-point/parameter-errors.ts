import { symmetricInverse } from "@/lib/statistics/symmetric-inverse";
import { type ChangePointModel, PARAMETER_NAMES, type ParameterName, sensitivities } from "./change-point-model";
import type { EnergyReadings } from "./fit-model";
import type { Goodness } from "./goodness";

/** Covariance of a model's parameters in the order of `PARAMETER_NAMES`, and standard errors by name. */
export type ParameterErrors = {
  covariance: readonly (readonly number[])[];
  standardErrors: Partial<Record<ParameterName, number>>;
};

/**
 * Standard errors of a fit, change points included: s² (JᵀJ)⁻¹ with s² = SSE / (n - p), the model taken as straight
 * near its optimum, times n / n' for the autocorrelation of the residuals (standard errors times
 * sqrt((1 + rho) / (1 - rho)), Reddy & Claridge 2000). This one correction only: s² is not divided by n' as well. Null
 * when the readings do not determine every parameter.
 */
export function parameterErrors(
  model: ChangePointModel,
  { outdoorC }: EnergyReadings,
  { n, p, sse, effectiveN }: Goodness,
): ParameterErrors | null {
  const names = PARAMETER_NAMES[model.kind];
  const normal = names.map(() => new Array<number>(names.length).fill(0));
  for (const tempC of outdoorC) {
    const row = sensitivities(model, tempC);
    for (let i = 0; i < names.length; i++) {
      const sums = normal[i] as number[];
      for (let j = 0; j < names.length; j++) sums[j] = (sums[j] as number) + (row[i] as number) * (row[j] as number);
    }
  }
  const inverse = symmetricInverse(normal);
  if (inverse === null) return null;
  const factor = (sse / (n - p)) * (n / effectiveN);
  const covariance = inverse.map((row) => row.map((each) => each * factor));
  const standardErrors = Object.fromEntries(names.map((name, i) => [name, Math.sqrt(covariance[i]?.[i] ?? 0)]));
  return { covariance, standardErrors };
}
