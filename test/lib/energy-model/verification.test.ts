import { expect, test } from "vitest";
import { candidateOf } from "@/lib/energy-model/change-point/choose-model";
import { fitModel } from "@/lib/energy-model/change-point/fit-model";
import { changePointSaving, measuredSetpointResponse } from "@/lib/energy-model/change-point/setpoint-shift";
import { outdoorHours } from "@/lib/energy-model/outdoor-hours";
import { pairedDifference } from "@/lib/energy-model/verification/paired-difference";
import { sampleSize } from "@/lib/energy-model/verification/sample-size";
import {
  fractionalSavingsUncertainty,
  leastDetectableFraction,
  reportingFactor,
} from "@/lib/energy-model/verification/savings-uncertainty";
import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

type Daily = { T: number[]; y: number[]; p: number; m: number; M_months: number; F: number };
test.each(loadCheckValues<Daily>("energy-model/savings-uncertainty-daily").cases)(
  "corrects the uncertainty of savings for autocorrelation once: $name",
  (check) => {
    const { T, y, p, m, M_months: months, F } = check.inputs;
    const readings = { outdoorC: Float64Array.from(T), energyKwh: Float64Array.from(y) };
    const model = fitModel("3PC", readings);
    if (!model) throw new Error("no model");
    const { cvRmse, n, effectiveN, rho } = candidateOf(model, readings, "day").goodness;
    const own: Record<string, number> = { rho, n_prime: effectiveN, CVRMSE: cvRmse };
    const factor = reportingFactor("day", months);
    for (const [name, level] of [
      ["FSU90", 0.9],
      ["FSU68", 0.68],
    ] as const) {
      const shared = { cvRmse, n, effectiveN, p, m, savedFraction: F, level };
      own[`${name}_no_autocorr`] = fractionalSavingsUncertainty({ ...shared, form: "none" });
      own[`${name}_rc_n_over_nprime`] = fractionalSavingsUncertainty({ ...shared, form: "effective-count" });
      own[`${name}_g14_2014_mse_nprime`] = fractionalSavingsUncertainty({ ...shared, form: "mean-square" });
      own[`${name}_sun_baltazar_daily`] = fractionalSavingsUncertainty({ ...shared, form: "effective-count", factor });
      own[`min_F_${name.slice(3)}`] = leastDetectableFraction({ ...shared, form: "effective-count", factor });
    }
    const wrong = ["FSU90_double_corrected_WRONG", "FSU68_double_corrected_WRONG"];
    const expected = Object.fromEntries(Object.entries(check.expected).filter(([key]) => !wrong.includes(key)));
    expect(Object.keys(expected)).toHaveLength(13);
    compareWithCase({ ...check, expected }, own);
    for (const key of wrong) {
      const twice = check.expected[key] as number;
      for (const [name, each] of Object.entries(own))
        if (name.startsWith(key.slice(0, 5))) expect(each).toBeLessThan(0.6 * twice);
    }
  },
);

type Monthly = { CVRMSE: number; F: number; n: number; m: number; p: number; conf: number };
test.each(loadCheckValues<Monthly>("energy-model/savings-uncertainty-monthly").cases)(
  "gives the monthly form without a term for autocorrelation: $name",
  (check) => {
    const { CVRMSE: cvRmse, F: savedFraction, n, m, p, conf: level } = check.inputs;
    const shared = { cvRmse, n, effectiveN: n, p, m, savedFraction, level, form: "none" as const };
    compareWithCase(check, {
      t: studentTwoSidedQuantile(level, n - p),
      FSU_1p26: fractionalSavingsUncertainty(shared),
      FSU_sun_baltazar: fractionalSavingsUncertainty({ ...shared, factor: reportingFactor("bill", 12) }),
    });
  },
);

test("has no uncertainty for savings of nothing or readings that are hardly independent", () => {
  const shared = { cvRmse: 0.1, n: 12, effectiveN: 2.5, p: 3, m: 12, level: 0.9 };
  expect(() => fractionalSavingsUncertainty({ ...shared, savedFraction: 0.1, form: "mean-square" })).toThrow(
    RangeError,
  );
  expect(() => fractionalSavingsUncertainty({ ...shared, savedFraction: 0, form: "none" })).toThrow(RangeError);
});

test.each(loadCheckValues<{ low: number[]; high: number[]; conf: number }>("energy-model/switchback").cases)(
  "compares alternating weeks in pairs: $name",
  (check) => {
    const { low, high, conf } = check.inputs;
    const { meanDifference, interval, t } = pairedDifference(low, high, conf);
    compareWithCase(check, { mean_diff: meanDifference, ci: interval, t });
    expect(() => pairedDifference([1], [2], conf)).toThrow(RangeError);
  },
);

test.each(loadCheckValues<{ z: number[]; cv: number[]; e: number[]; N: number[] }>("energy-model/sample-size").cases)(
  "says how many devices to meter: $name",
  (check) => {
    const { z, cv, e, N } = check.inputs;
    const sizes = z.map((each, i) =>
      sampleSize({
        z: each,
        variationFraction: cv[i] as number,
        precisionFraction: e[i] as number,
        devices: N[i] as number,
      }),
    );
    compareWithCase(check, {
      n0: sizes.map((each) => each.ofMany),
      n: sizes.map((each) => each.ofThese),
      n_ceil: sizes.map((each) => each.toMeter),
    });
  },
);

/** A year of which each temperature is one interval. */
const yearOf = (T: ArrayLike<number>) => outdoorHours(T, new Float64Array(T.length).fill(1));

type Shift = { T: number[]; b1: number; Tcp: number; kappa: number; dTset_K: number };
test.each(loadCheckValues<Shift>("energy-model/setpoint-shift").cases)(
  "saves by moving the change point, not by its tangent: $name",
  (check) => {
    const { T, b1, Tcp, kappa, dTset_K } = check.inputs;
    const model = { kind: "3PC" as const, base: 0, coolingSlope: b1, coolingChangeC: Tcp };
    const errors = {
      covariance: [
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
      standardErrors: {},
    };
    const riseK = kappa * dTset_K;
    const saving = changePointSaving({ model, errors }, yearOf(T), riseK)?.savingKwh ?? Number.NaN;
    const cooling = T.reduce((sum, each) => sum + b1 * Math.max(0, each - Tcp), 0);
    compareWithCase(check, {
      cooling_kWh: cooling,
      saving_kWh: saving,
      saving_pct_of_cooling: (100 * saving) / cooling,
      first_order_kWh: b1 * riseK * T.filter((each) => each > Tcp).length,
    });
  },
);

test("a saving's standard error is that of its parameters, carried by differences", () => {
  const T = Float64Array.from({ length: 365 }, (_, i) => 12 + 12 * Math.sin(i / 58) + ((i * 7) % 11) - 5);
  const energyKwh = T.map(
    (t, i) => 500 + 9 * Math.max(0, 8 - t) + 20 * Math.max(0, t - 15) + (((i * 13) % 17) - 8) * 6,
  );
  for (const kind of ["3PC", "4P", "5P"] as const) {
    const fitted = fitModel(kind, { outdoorC: T, energyKwh });
    if (!fitted) throw new Error("no model");
    // Off any reading: at one the energy has a kink, and no difference quotient is its derivative.
    const off = 0.00137;
    const model =
      fitted.kind === "4P"
        ? { ...fitted, changeC: fitted.changeC + off }
        : fitted.kind === "2P" || fitted.kind === "3PH"
          ? fitted
          : { ...fitted, coolingChangeC: fitted.coolingChangeC + off };
    const { errors } = candidateOf(model, { outdoorC: T, energyKwh }, "day");
    if (!errors) throw new Error("no errors");
    const saving = changePointSaving({ model, errors }, yearOf(T), 0.5);
    const keys = Object.keys(errors.standardErrors) as (keyof typeof model)[];
    const gradient = keys.map((key) => {
      const moved = (by: number): number =>
        changePointSaving({ model: { ...model, [key]: (model[key] as number) + by }, errors }, yearOf(T), 0.5)
          ?.savingKwh ?? 0;
      return (moved(1e-5) - moved(-1e-5)) / 2e-5;
    });
    let variance = 0;
    for (const [i, row] of errors.covariance.entries())
      for (const [j, each] of row.entries()) variance += each * (gradient[i] as number) * (gradient[j] as number);
    expect((saving?.standardErrorKwh ?? 0) / Math.sqrt(variance), kind).toBeCloseTo(1, 3);
  }
});

test("models without a cooling change point do not say what a setpoint is worth", () => {
  const errors = {
    covariance: [
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
    ],
    standardErrors: {},
  };
  const heating = { kind: "3PH" as const, base: 1, heatingSlope: 2, heatingChangeC: 10 };
  expect(changePointSaving({ model: heating, errors }, yearOf([1, 2]), 1)).toBeNull();
  expect(changePointSaving({ model: { kind: "2P", base: 1, slope: 1 }, errors }, yearOf([1, 2]), 1)).toBeNull();
});

test("a setpoint that was changed measures its own response", () => {
  const response = measuredSetpointResponse(
    { changeC: 12, standardErrorK: 0.3 },
    { changeC: 13, standardErrorK: 0.4 },
    2,
  );
  expect(response).toEqual({ response: 0.5, standardError: 0.25 });
  expect(() =>
    measuredSetpointResponse({ changeC: 12, standardErrorK: 0.3 }, { changeC: 13, standardErrorK: 0.4 }, 0),
  ).toThrow(RangeError);
});
