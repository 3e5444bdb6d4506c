import { mean, sampleDeviation } from "@/lib/statistics/moments";
import { quantiles } from "@/lib/statistics/quantile";
import { seededRandom } from "@/lib/statistics/random";
import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";
import { dayNumberFromLocalDate, isoWeekday } from "@/lib/time/civil-date";
import { holidayDays, type OccupiedHours } from "@/lib/time/occupied-hours";
import { LEAST_LOGGED_DAYS, stratifiedYear } from "../logged-days";
import { isWhole } from "./log-days";
import type { PlugDay } from "./plug-log-figures";

/** Level of the interval, two-sided. */
export const SEASON_CONFIDENCE = 0.9;
/** From this many days a stratum's mean is near enough to normal for Student's t, if its days are not lopsided (reference A6). */
const T_LEAST_DAYS = 15;
const T_MOST_SKEWNESS = 1;
const REPLICATES = 5000;
const SEED = 20_260_101;
/** Longest time that a log of one season may stand for [days]: seven months. A summer says nothing of a winter. */
export const LONGEST_SEASON_DAYS = 214;

export type SeasonStratum = {
  name: "occupied days" | "other days";
  /** Days of the season, and those of them that were logged whole. */
  days: number;
  loggedDays: number;
  meanKwh: number;
  deviationKwh: number;
  skewness: number;
};

export type SeasonEstimate =
  | {
      status: "refused";
      code: "short-log" | "period-unreadable" | "period-too-long" | "dates-deleted";
      message: string;
    }
  | {
      status: "ok";
      fromDate: string;
      toDate: string;
      strata: SeasonStratum[];
      /** Strata with too few days: nothing is said of them, and their days are not in the total. */
      leftOut: { name: SeasonStratum["name"]; days: number; loggedDays: number }[];
      energyKwh: { value: number; low: number; high: number };
      method: "student-t" | "bootstrap-by-day";
    };

/**
 * Energy of a season from the whole days of a log, by occupied and other days: E = Σ N·mean, with a 90 % interval by
 * Student's t (Welch-Satterthwaite degrees of freedom) or, with fewer than 15 days or lopsided ones, by resampling days.
 * Both shrink by √(1 - n/N). The unit is the day; only days within the season count (reference A6).
 * Days that have lost their dates count when all of the log (`span`) lies within it.
 */
export function seasonEstimate(
  days: readonly PlugDay[],
  stands: { from: string; to: string },
  hours: OccupiedHours,
  span: { from: string; to: string } | null = null,
): SeasonEstimate {
  const [from, to] = [dayNumberFromLocalDate(stands.from), dayNumberFromLocalDate(stands.to)];
  if (from === null || to === null || to < from)
    return refused(
      "period-unreadable",
      "Give the first and the last day of the season as YYYY-MM-DD, the first one first.",
    );
  if (to - from + 1 > LONGEST_SEASON_DAYS)
    return refused(
      "period-too-long",
      `A log of one season stands for that season only: at most ${LONGEST_SEASON_DAYS} days, and ${to - from + 1} were asked for. Log again in the other season.`,
    );
  const isInside = span !== null && span.from >= stands.from && span.to <= stands.to;
  if (!isInside && days.some((day) => day.date === null))
    return refused(
      "dates-deleted",
      `With the raw readings the dates of the days were deleted, so the log stands for a season only that holds all of it, ${span?.from ?? ""} to ${span?.to ?? ""}.`,
    );
  const isWithin = ({ date }: PlugDay): boolean => date === null || (date >= stands.from && date <= stands.to);
  const inSeason = days.filter((day) => isWhole(day) && isWithin(day));
  if (inSeason.length < LEAST_LOGGED_DAYS)
    return refused(
      "short-log",
      `${inSeason.length} whole days were logged within the season, and fewer than ${LEAST_LOGGED_DAYS} say nothing of it: days differ more than so few can show. Leave the logger for two weeks or more; until then the hours on record stand.`,
    );
  const holidays = holidayDays(hours);
  let occupiedDays = 0;
  for (let day = from; day <= to; day++)
    if (!holidays.has(day) && (hours.weekdays[isoWeekday(day)] ?? []).length > 0) occupiedDays += 1;
  const groups = [
    { name: "occupied days" as const, days: occupiedDays, kwh: energies(inSeason, true) },
    { name: "other days" as const, days: to - from + 1 - occupiedDays, kwh: energies(inSeason, false) },
  ].filter((group) => group.days > 0);
  const used = groups.filter((group) => group.kwh.length >= LEAST_LOGGED_DAYS);
  const leftOut = groups
    .filter((group) => group.kwh.length < LEAST_LOGGED_DAYS)
    .map(({ name, days, kwh }) => ({ name, days, loggedDays: kwh.length }));
  if (used.length === 0)
    return refused(
      "short-log",
      "Neither occupied nor other days were logged five times, so neither kind says anything of the season. Leave the logger for two weeks or more.",
    );
  const strata = used.map(({ name, days, kwh }) => ({
    name,
    days,
    loggedDays: kwh.length,
    meanKwh: mean(kwh),
    deviationKwh: sampleDeviation(kwh),
    skewness: skewnessOf(kwh),
  }));
  const byT = strata.every((each) => each.loggedDays >= T_LEAST_DAYS && Math.abs(each.skewness) < T_MOST_SKEWNESS);
  const value = stratifiedYear(strata).energyKwh;
  const interval = byT ? intervalByT(strata) : intervalByDays(used, value);
  return {
    status: "ok",
    fromDate: stands.from,
    toDate: stands.to,
    strata,
    leftOut,
    energyKwh: { value, low: Math.max(0, interval.low), high: interval.high },
    method: byT ? "student-t" : "bootstrap-by-day",
  };
}

const refused = (code: Extract<SeasonEstimate, { status: "refused" }>["code"], message: string): SeasonEstimate => ({
  status: "refused",
  code,
  message,
});

const energies = (days: readonly PlugDay[], isOccupied: boolean): number[] =>
  days.filter((day) => day.isOccupied === isOccupied).map((day) => day.energyKwh);

function intervalByT(strata: readonly SeasonStratum[]): { low: number; high: number } {
  const { energyKwh, standardErrorKwh } = stratifiedYear(strata);
  let [variance, squares] = [0, 0];
  for (const { days, loggedDays, deviationKwh } of strata) {
    const own = (days ** 2 * (1 - loggedDays / days) * deviationKwh ** 2) / loggedDays;
    variance += own;
    squares += own ** 2 / (loggedDays - 1);
  }
  if (variance === 0) return { low: energyKwh, high: energyKwh };
  const half = studentTwoSidedQuantile(SEASON_CONFIDENCE, variance ** 2 / squares) * standardErrorKwh;
  return { low: energyKwh - half, high: energyKwh + half };
}

/** Percentile interval (Efron & Tibshirani 1993, 13.3) of the total over resampled days of each stratum. */
function intervalByDays(groups: readonly { days: number; kwh: readonly number[] }[], value: number) {
  const random = seededRandom(SEED);
  const totals = Float64Array.from({ length: REPLICATES }, () => {
    let total = value;
    for (const { days, kwh } of groups) {
      let sum = 0;
      for (let i = 0; i < kwh.length; i++) sum += kwh[Math.floor(random() * kwh.length)] as number;
      total += days * Math.sqrt(1 - kwh.length / days) * (sum / kwh.length - mean(kwh));
    }
    return total;
  });
  const tail = (1 - SEASON_CONFIDENCE) / 2;
  const [low, high] = quantiles(totals, [tail, 1 - tail]) as [number, number];
  return { low, high };
}

/** Sample skewness m3 / m2^1.5; 0 for days that are all alike. */
function skewnessOf(values: readonly number[]): number {
  const centre = mean(values);
  let [second, third] = [0, 0];
  for (const value of values) {
    second += (value - centre) ** 2;
    third += (value - centre) ** 3;
  }
  second /= values.length;
  return second === 0 ? 0 : third / values.length / second ** 1.5;
}
