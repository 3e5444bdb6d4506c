import { poissonProbability } from "@/lib/statistics/poisson";
import { solveCurvature } from "./fit-report-model";
import { addGradient, rateAt } from "./predictor";
import type { ReportModel } from "./report-model";
import { VOTES_REACH } from "./vote-prior";

/** Desk-hours of a zone that are to be judged, by zone air temperature. */
export type PlannedZone = { zone: string; bins: readonly { airTempC: number; deskHours: number }[] };

/** Person-days that report: the expected number with its 90 % interval, and the 90 % interval of the count that is seen. */
export type Expected = { median: number; low: number; high: number; countLow: number; countHigh: number };

export type ExpectedReports = {
  tooCold: Expected;
  tooWarm: Expected;
  /** Desk-hours beyond the temperatures that the field votes reach. */
  beyondVotesHours: number;
};

/** Normal deviate of the end of a 90 % interval. */
const END_90 = 1.6448536269514722;
/** Above this a count is as good as normal, and the sum of its chances takes long. */
const LARGE_COUNT = 2000;

/**
 * Expected reports of too cold and too warm when each zone's air is moved by `shiftK` [K] over its desk-hours, of one or
 * several seasons with a model each. Uncertainty of rates, shares, floors and zones by the curvature of each fit (delta
 * method on the log), mixed over the deviations of zones by their weights; seasons add as independent lognormals
 * (Fenton 1960). A zone that the model does not know is a RangeError.
 */
export function expectedReports(
  seasons: readonly { model: ReportModel; zones: readonly PlannedZone[] }[],
  shiftK: (zone: string) => number = () => 0,
): ExpectedReports {
  const moments = ([0, 1] as const).map((side) => {
    const parts = seasons.map(({ model, zones }) => logTotal(model, zones, shiftK, side));
    return addLognormals(parts);
  });
  const [tooCold, tooWarm] = moments.map(expectedOf);
  let beyondVotesHours = 0;
  for (const { zones } of seasons)
    for (const { zone, bins } of zones)
      for (const { airTempC, deskHours } of bins) {
        const tempC = airTempC + shiftK(zone);
        if (tempC < VOTES_REACH.lowC || tempC > VOTES_REACH.highC) beyondVotesHours += deskHours;
      }
  return { tooCold: tooCold as Expected, tooWarm: tooWarm as Expected, beyondVotesHours };
}

/** The medians alone, of one season: what a curve needs at each of its points, at a fraction of the work. */
export function medianReports(model: ReportModel, zones: readonly PlannedZone[]): { tooCold: number; tooWarm: number } {
  const median = (side: 0 | 1): number => {
    const logs = model.fits.map((fit) => {
      let total = 0;
      for (const { zone: name, bins } of zones) {
        const zone = model.zones.indexOf(name);
        const place = { zone, floor: model.floorOfZone[zone] as number };
        for (const { airTempC, deskHours } of bins) total += rateAt(fit, side, place, airTempC).rate * deskHours;
      }
      return fit.weight * Math.log(total);
    });
    return Math.exp(logs.reduce((sum, each) => sum + each, 0));
  };
  return { tooCold: median(0), tooWarm: median(1) };
}

/** Mean and deviation of the log of a total; a total of nothing has no log. */
type LogTotal = { mean: number; deviation: number } | null;

function logTotal(
  model: ReportModel,
  zones: readonly PlannedZone[],
  shiftK: (zone: string) => number,
  side: 0 | 1,
): LogTotal {
  const parts = model.fits.map((fit) => {
    const shared = new Float64Array(fit.shared.length);
    const own = new Float64Array(fit.own.length);
    let total = 0;
    for (const { zone: name, bins } of zones) {
      const zone = model.zones.indexOf(name);
      if (zone < 0) throw new RangeError(`the model knows no zone ${name}`);
      const floor = model.floorOfZone[zone] as number;
      for (const { airTempC, deskHours } of bins) {
        const rate = rateAt(fit, side, { zone, floor }, airTempC + shiftK(name));
        const expected = rate.rate * deskHours;
        total += expected;
        addGradient(shared, side, floor, rate, expected);
        own[2 * zone + side] = (own[2 * zone + side] as number) + expected;
      }
    }
    const solved = solveCurvature(fit.curvature, shared, own);
    const variance = dot(shared, solved.shared) + dot(own, solved.own);
    return { weight: fit.weight, mean: Math.log(total), variance: variance / total ** 2 };
  });
  if (parts.some(({ mean }) => mean === Number.NEGATIVE_INFINITY)) return null;
  const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
  const variance = parts.reduce((sum, part) => sum + part.weight * (part.variance + (part.mean - mean) ** 2), 0);
  return { mean, deviation: Math.sqrt(variance) };
}

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, v, i) => sum + v * (b[i] as number), 0);

function addLognormals(parts: readonly LogTotal[]): LogTotal {
  const known = parts.filter((part) => part !== null);
  const [only] = known;
  if (!only || known.length === 1) return only ?? null;
  const moments = known.map(({ mean, deviation }) => {
    const first = Math.exp(mean + deviation ** 2 / 2);
    return { first, variance: first ** 2 * Math.expm1(deviation ** 2) };
  });
  const first = moments.reduce((sum, each) => sum + each.first, 0);
  const variance = Math.log1p(moments.reduce((sum, each) => sum + each.variance, 0) / first ** 2);
  return { mean: Math.log(first) - variance / 2, deviation: Math.sqrt(variance) };
}

function expectedOf(total: LogTotal): Expected {
  if (total === null) return { median: 0, low: 0, high: 0, countLow: 0, countHigh: 0 };
  const { mean, deviation } = total;
  const at = (deviate: number): number => Math.exp(mean + deviation * deviate);
  return { median: at(0), low: at(-END_90), high: at(END_90), ...countInterval(at) };
}

/** Middles of equal parts of a standard normal, for averaging over it. */
const DEVIATES = [
  -1.96, -1.44, -1.15, -0.935, -0.755, -0.598, -0.454, -0.319, -0.189, -0.063, 0.063, 0.189, 0.319, 0.454, 0.598, 0.755,
  0.935, 1.15, 1.44, 1.96,
];

function countInterval(meanAt: (deviate: number) => number): { countLow: number; countHigh: number } {
  const means = DEVIATES.map(meanAt);
  if ((means.at(-1) as number) > LARGE_COUNT) {
    const [low, high] = [meanAt(-END_90), meanAt(END_90)];
    return {
      countLow: Math.max(0, Math.floor(low - END_90 * Math.sqrt(low))),
      countHigh: Math.ceil(high + END_90 * Math.sqrt(high)),
    };
  }
  return countEnds(means);
}

/** Below its mean by so many deviations a count is never seen. */
const NEVER_SEEN_DEVIATIONS = 8;

/** The smallest counts whose chance of at most them reaches 5 and 95 %, as a mixture over means: one walk upwards. */
function countEnds(means: readonly number[]): { countLow: number; countHigh: number } {
  const least = means[0] as number;
  let count = Math.max(0, Math.floor(least - NEVER_SEEN_DEVIATIONS * Math.sqrt(least)));
  let atMost = 0;
  let countLow: number | null = null;
  for (; ; count++) {
    for (const mean of means) atMost += poissonProbability(count, mean) / means.length;
    if (countLow === null && atMost >= 0.05) countLow = count;
    if (atMost >= 0.95) return { countLow: countLow ?? count, countHigh: count };
  }
}
