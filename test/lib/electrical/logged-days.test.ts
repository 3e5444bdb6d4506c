import { expect, test } from "vitest";
import { bootstrapMeanInterval, estimateFromDays, type Stratum, stratifiedYear } from "@/lib/electrical/logged-days";
import { sampleDeviation } from "@/lib/statistics/moments";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

type Days = { kWh_per_day: number[]; conf: number; N_days_in_stratum: number };

test.each(loadCheckValues<Days>("electrical/logger-days").cases)(
  "a logger's days stand for a season: $name",
  (check) => {
    const { kWh_per_day: days, N_days_in_stratum: daysInSeason } = check.inputs;
    const tQuantile = check.expected.t as number;
    const found = estimateFromDays(days, { daysInSeason, tQuantile });
    if (!found) throw new Error("twenty days are enough");
    compareWithCase(check, {
      mean: found.meanKwh,
      sd: sampleDeviation(days),
      t: tQuantile,
      ci_low: found.low,
      ci_high: found.high,
      season_total_kWh: found.seasonKwh,
      season_ci_fpc: [found.seasonLow, found.seasonHigh],
    });
  },
);

test("four days, or more days than the season has, give no interval", () => {
  expect(estimateFromDays([1, 2, 3, 4], { daysInSeason: 85, tQuantile: 2 })).toBeNull();
  expect(estimateFromDays([1, 2, 3, 4, 5, 6], { daysInSeason: 5, tQuantile: 2 })).toBeNull();
  expect(bootstrapMeanInterval([1, 2, 3, 4], { confidence: 0.9, seed: 1 })).toBeNull();
});

test("all days of a season logged leave nothing to chance", () => {
  const all = estimateFromDays([1, 2, 3, 4, 5], { daysInSeason: 5, tQuantile: 2 });
  expect([all?.seasonLow, all?.seasonHigh]).toEqual([15, 15]);
});

test.each(loadCheckValues<Days>("electrical/logger-bootstrap").cases)("resampled days: $name", (check) => {
  const found = bootstrapMeanInterval(check.inputs.kWh_per_day, { confidence: check.inputs.conf, seed: 20240101 });
  const { perc } = check.expected as { perc: [number, number] };
  const allowed = check.tolerance.perc as [number, number];
  // The file also has the bias-corrected interval, which the tool does not use: it lies within 0.3 % of this one.
  expect(Math.abs((found?.low ?? Number.NaN) - perc[0])).toBeLessThanOrEqual(allowed[0]);
  expect(Math.abs((found?.high ?? Number.NaN) - perc[1])).toBeLessThanOrEqual(allowed[1]);
});

type Strata = { strata: { N: number; n: number; mean: number; sd: number }[] };
test.each(loadCheckValues<Strata>("electrical/stratified-year").cases)(
  "kinds of day add up to a year: $name",
  (check) => {
    const strata = check.inputs.strata.map(
      ({ N, n, mean, sd }): Stratum => ({ days: N, loggedDays: n, meanKwh: mean, deviationKwh: sd }),
    );
    const { energyKwh, standardErrorKwh } = stratifiedYear(strata);
    compareWithCase(check, { kWh: energyKwh, se_kWh: standardErrorKwh });
  },
);
