import { choleskyOf, logDeterminant, solveWithCholesky } from "@/lib/statistics/cholesky";
import { addGradient, rateAt } from "./predictor";
import {
  type Curvature,
  type ReportModel,
  SHARED_FIXED,
  type WeightedFit,
  ZONE_DEVIATIONS,
  type ZoneExposureBins,
} from "./report-model";
import type { VotePrior } from "./vote-prior";

/**
 * No published rate of reports per person could be found: the log of reports per desk-hour of those who want a change begins
 * at one in 200 h, within a factor of 400 either way (two deviations). Judgement, no source.
 */
const RATE_PRIOR = { mean: Math.log(1 / 200), deviation: 3 };
/** Half-normal scale of the deviation of zones about their floor, on the log of a rate. Judgement, no source. */
const ZONE_SCALE = 0.6;
const STEPS = 60;

type Problem = {
  zones: readonly ZoneExposureBins[];
  floorOfZone: number[];
  mean: Float64Array;
  precision: Float64Array;
};

/**
 * Fits the rates of reports of one season to a building's exposures by Laplace's approximation: Fisher scoring to the
 * optimum of the posterior, its curvature for how well all is known, and a weight for each deviation of zones by the
 * marginal likelihood (Tierney & Kadane 1986). Zones without reports or exposure keep their floor's rates.
 */
export function fitReportModel(zones: readonly ZoneExposureBins[], prior: VotePrior): ReportModel {
  const floors = [...new Set(zones.map(({ floor }) => floor))];
  const floorOfZone = zones.map(({ floor }) => floors.indexOf(floor));
  const tried = ZONE_DEVIATIONS.map((deviation) =>
    fitOne(problemOf(zones, floorOfZone, floors.length, prior, deviation), deviation),
  );
  const best = Math.max(...tried.map(({ evidence }) => evidence));
  const total = tried.reduce((sum, { evidence }) => sum + Math.exp(evidence - best), 0);
  return {
    zones: zones.map(({ zone }) => zone),
    floors,
    floorOfZone,
    prior,
    fits: tried.map(({ evidence, fit }) => ({ ...fit, weight: Math.exp(evidence - best) / total })),
  };
}

function problemOf(
  zones: readonly ZoneExposureBins[],
  floorOfZone: number[],
  floors: number,
  { warmer, cooler }: VotePrior,
  zoneDeviation: number,
): Problem {
  const size = SHARED_FIXED + 2 * floors;
  const mean = new Float64Array(size);
  mean.set([RATE_PRIOR.mean, warmer.a, warmer.b, cooler.a, cooler.b]);
  const deviations = [RATE_PRIOR.deviation, warmer.deviationA, warmer.deviationB, cooler.deviationA, cooler.deviationB];
  const precision = Float64Array.from({ length: size }, (_, i) => (deviations[i] ?? zoneDeviation / 2) ** -2);
  return { zones, floorOfZone, mean, precision };
}

function fitOne(problem: Problem, zoneDeviation: number): { evidence: number; fit: Omit<WeightedFit, "weight"> } {
  const { mean, precision, zones } = problem;
  let shared = Float64Array.from(mean);
  let own: Float64Array = new Float64Array(2 * zones.length);
  let at = derivatives(problem, shared, own, zoneDeviation);
  for (let step = 0; step < STEPS; step++) {
    const move = newtonMove(at);
    let scale = 1;
    let next = at;
    let moved = { shared, own };
    // Fisher scoring may overshoot where exposure is large against the prior: halved until it no longer gets worse.
    for (let half = 0; half < 30; half++, scale /= 2) {
      moved = {
        shared: shared.map((v, i) => v + scale * (move.shared[i] as number)),
        own: own.map((v, i) => v + scale * (move.own[i] as number)),
      };
      next = derivatives(problem, moved.shared, moved.own, zoneDeviation);
      if (next.logPosterior >= at.logPosterior - 1e-12) break;
    }
    const gain = next.logPosterior - at.logPosterior;
    ({ shared, own } = moved);
    at = next;
    if (gain < 1e-9) break;
  }
  const logPrecision =
    precision.reduce((sum, each) => sum + Math.log(each), 0) - 4 * zones.length * Math.log(zoneDeviation);
  const logCurvature =
    logDeterminant(at.curvature.schur) + at.curvature.own.reduce((sum, each) => sum + Math.log(each), 0);
  const evidence = at.logPosterior + 0.5 * logPrecision - 0.5 * logCurvature - 0.5 * (zoneDeviation / ZONE_SCALE) ** 2;
  return { evidence, fit: { zoneDeviation, shared, own, curvature: at.curvature } };
}

type Derivatives = { logPosterior: number; shared: Float64Array; own: Float64Array; curvature: Curvature };

function derivatives(problem: Problem, shared: Float64Array, own: Float64Array, zoneDeviation: number): Derivatives {
  const { zones, floorOfZone, mean, precision } = problem;
  const size = shared.length;
  const gradient = shared.map((v, i) => -(precision[i] as number) * (v - (mean[i] as number)));
  const ownGradient = own.map((v) => -v / zoneDeviation ** 2);
  const ownCurvature = own.map(() => zoneDeviation ** -2);
  const cross = Array.from(own, () => new Float64Array(size));
  const matrix = Array.from(shared, (_, i) => {
    const row = new Float64Array(size);
    row[i] = precision[i] as number;
    return row;
  });
  let logPosterior = 0;
  for (const [i, v] of shared.entries())
    logPosterior -= 0.5 * (precision[i] as number) * (v - (mean[i] as number)) ** 2;
  for (const v of own) logPosterior -= 0.5 * (v / zoneDeviation) ** 2;
  const slope = new Float64Array(size);
  for (const [zone, { bins }] of zones.entries()) {
    const floor = floorOfZone[zone] as number;
    for (const bin of bins) {
      if (bin.deskHours <= 0) continue;
      for (const side of [0, 1] as const) {
        const seen = side === 0 ? bin.tooCold : bin.tooWarm;
        const rate = rateAt({ shared, own }, side, { zone, floor }, bin.airTempC);
        const expected = rate.rate * bin.deskHours;
        logPosterior += seen * Math.log(rate.rate) - expected;
        addGradient(gradient, side, floor, rate, seen - expected);
        slope.fill(0);
        addGradient(slope, side, floor, rate, 1);
        const places = [0, 1 + 2 * side, 2 + 2 * side, SHARED_FIXED + 2 * floor + side];
        const row = cross[2 * zone + side] as Float64Array;
        for (const a of places) {
          row[a] = (row[a] as number) + expected * (slope[a] as number);
          const line = matrix[a] as Float64Array;
          for (const b of places)
            line[b] = (line[b] as number) + expected * (slope[a] as number) * (slope[b] as number);
        }
        ownGradient[2 * zone + side] = (ownGradient[2 * zone + side] as number) + seen - expected;
        ownCurvature[2 * zone + side] = (ownCurvature[2 * zone + side] as number) + expected;
      }
    }
  }
  for (const [k, row] of cross.entries())
    for (let a = 0; a < size; a++) {
      const line = matrix[a] as Float64Array;
      const part = (row[a] as number) / (ownCurvature[k] as number);
      if (part !== 0) for (let b = 0; b < size; b++) line[b] = (line[b] as number) - part * (row[b] as number);
    }
  const schur = choleskyOf(matrix);
  return {
    // A step that went too far has rates beyond all numbers: worse than any other.
    logPosterior: schur && Number.isFinite(logPosterior) ? logPosterior : Number.NEGATIVE_INFINITY,
    shared: gradient,
    own: ownGradient,
    curvature: { schur: schur ?? [], cross, own: ownCurvature },
  };
}

const newtonMove = ({ shared, own, curvature }: Derivatives) => solveCurvature(curvature, shared, own);

/** Solves the curvature against a gradient, the zones' part eliminated first. */
export function solveCurvature(
  { schur, cross, own: diagonal }: Curvature,
  shared: Float64Array,
  own: Float64Array,
): { shared: Float64Array; own: Float64Array } {
  const right = Float64Array.from(shared);
  for (const [k, row] of cross.entries()) {
    const part = (own[k] as number) / (diagonal[k] as number);
    if (part !== 0) for (let a = 0; a < right.length; a++) right[a] = (right[a] as number) - part * (row[a] as number);
  }
  const x = solveWithCholesky(schur, right);
  const rest = own.map((v, k) => {
    const row = cross[k] as Float64Array;
    let sum = v;
    for (let a = 0; a < x.length; a++) sum -= (row[a] as number) * (x[a] as number);
    return sum / (diagonal[k] as number);
  });
  return { shared: x, own: rest };
}
