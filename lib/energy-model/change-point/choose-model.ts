import {
  type ChangePointModel,
  MODEL_KINDS,
  type ModelKind,
  modelledEnergyKwh,
  PARAMETERS,
} from "./change-point-model";
import { type EnergyReadings, fitSorted } from "./fit-model";
import type { ReadingLength } from "./fit-rules";
import { type Goodness, goodnessOf } from "./goodness";
import { type ParameterErrors, parameterErrors } from "./parameter-errors";
import { type FitFinding, fitFaults } from "./qualify-fit";
import { SortedSums } from "./sorted-sums";

/** A kind of model tried on the readings. It may be used when `faults` is empty. */
export type Candidate = {
  model: ChangePointModel;
  goodness: Goodness;
  errors: ParameterErrors | null;
  /** Coldest and warmest reading of the fit. */
  fittedC: { lowC: number; highC: number };
  faults: FitFinding[];
};

/** A candidate that may be used: its errors are known. */
export type QualifiedFit = Candidate & { errors: ParameterErrors };

/**
 * The model of a set of readings with all that were tried, best first; or why there is none. `kindsLeftOut` are those
 * that the readings are too few for.
 */
export type ModelChoice =
  | { status: "ok"; chosen: QualifiedFit; candidates: Candidate[]; kindsLeftOut: ModelKind[] }
  | { status: "refused"; candidates: Candidate[]; kindsLeftOut: ModelKind[] };

/**
 * Fits every kind of model and takes the one of highest adjusted R² among those that no rule disqualifies (CalTRACK
 * 2.0, 3.4). Adjusted R² counts the change points as parameters, so that a kind with more of them has to earn them.
 */
export function chooseModel(readings: EnergyReadings, length: ReadingLength): ModelChoice {
  const candidates: Candidate[] = [];
  const kindsLeftOut: ModelKind[] = [];
  const n = readings.energyKwh.length;
  const sums = n > 0 ? new SortedSums(readings.outdoorC, readings.energyKwh) : null;
  for (const kind of MODEL_KINDS) {
    const model = sums && n > PARAMETERS[kind] && sums.meanKwh > 0 ? fitSorted(kind, sums) : null;
    if (model) candidates.push(candidateOf(model, readings, length));
    else kindsLeftOut.push(kind);
  }
  candidates.sort((one, other) => other.goodness.adjustedR2 - one.goodness.adjustedR2);
  const chosen = candidates.find((each): each is QualifiedFit => each.faults.length === 0 && each.errors !== null);
  return chosen ? { status: "ok", chosen, candidates, kindsLeftOut } : { status: "refused", candidates, kindsLeftOut };
}

/** A model with its statistics, errors and the reasons against it. */
export function candidateOf(model: ChangePointModel, readings: EnergyReadings, length: ReadingLength): Candidate {
  const modelled = readings.outdoorC.map((tempC) => modelledEnergyKwh(model, tempC));
  const goodness = goodnessOf(readings.energyKwh, modelled, PARAMETERS[model.kind]);
  const errors = parameterErrors(model, readings, goodness);
  const fittedC = { lowC: Math.min(...readings.outdoorC), highC: Math.max(...readings.outdoorC) };
  return {
    model,
    goodness,
    errors,
    fittedC,
    faults: fitFaults(model, { goodness, errors, fittedC, length }, readings),
  };
}
