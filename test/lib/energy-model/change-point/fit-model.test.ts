import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type ChangePointModel,
  MODEL_KINDS,
  type ModelKind,
  modelledEnergyKwh,
} from "@/lib/energy-model/change-point/change-point-model";
import { candidateOf } from "@/lib/energy-model/change-point/choose-model";
import { type EnergyReadings, fitModel } from "@/lib/energy-model/change-point/fit-model";
import { goodnessOf } from "@/lib/energy-model/change-point/goodness";
import { normalPair } from "@/lib/statistics/normal";
import { seededRandom } from "@/lib/statistics/random";
import { studentTwoSided, studentTwoSidedQuantile } from "@/lib/statistics/student-t";
import { compareWithCase, loadCheckValues } from "../../../support/check-values";

const readingsOf = ({ T, y }: { T: readonly number[]; y: readonly number[] }): EnergyReadings => ({
  outdoorC: Float64Array.from(T),
  energyKwh: Float64Array.from(y),
});

function fitted(kind: ModelKind, readings: EnergyReadings): ChangePointModel {
  const model = fitModel(kind, readings);
  if (!model) throw new Error(`no ${kind}`);
  return model;
}

const sseOf = (model: ChangePointModel, { outdoorC, energyKwh }: EnergyReadings): number =>
  energyKwh.reduce((sum, y, i) => sum + (y - modelledEnergyKwh(model, outdoorC[i] as number)) ** 2, 0);

/** A model's values under the names of the check values. */
const named = (model: ChangePointModel): Record<string, number> => {
  switch (model.kind) {
    case "2P":
      return { b0: model.base, b1: model.slope };
    case "3PC":
      return { b0: model.base, b1: model.coolingSlope, Tcp: model.coolingChangeC };
    case "3PH":
      return { b0: model.base, b1: model.heatingSlope, Tcp: model.heatingChangeC };
    case "4P":
      return { b0: model.base, bL: model.leftSlope, bR: model.rightSlope, Tcp: model.changeC };
    case "5P":
      return {
        b0: model.base,
        bH: model.heatingSlope,
        bC: model.coolingSlope,
        Th: model.heatingChangeC,
        Tc: model.coolingChangeC,
      };
  }
};

type Set = { kind: ModelKind; T: number[]; y: number[] };
test.each(loadCheckValues<Set>("energy-model/change-point").cases)(
  "finds the global optimum that R and scipy found: $name",
  (check) => {
    const readings = readingsOf(check.inputs);
    const model = fitted(check.inputs.kind, readings);
    const { goodness } = candidateOf(model, readings, "day");
    compareWithCase(check, {
      ...named(model),
      n: goodness.n,
      p: goodness.p,
      SSE: goodness.sse,
      RMSE_n_minus_p: goodness.rmseKwh,
      CVRMSE_pct: goodness.cvRmse * 100,
      NMBE_pct: goodness.nmbe * 100,
      R2: goodness.r2,
      rho_lag1: goodness.rho,
      ybar: goodness.meanKwh,
    });
  },
);

test.each(
  loadCheckValues<{ T: number[]; y: number[]; from: number; to: number; step: number }>(
    "energy-model/change-point-grid",
  ).cases,
)("does no worse than a grid of balance points, and lies within a step of the grid's best: $name", (check) => {
  const { from, to, step, ...set } = check.inputs;
  const readings = readingsOf(set);
  const model = fitted("3PC", readings);
  const expected = check.expected as { Tcp: number; SSE: number };
  expect(sseOf(model, readings)).toBeLessThan(expected.SSE);
  expect(Math.abs((named(model).Tcp ?? Number.NaN) - expected.Tcp)).toBeLessThan(step);
  let best = { Tcp: Number.NaN, SSE: Number.POSITIVE_INFINITY };
  for (let Tcp = from; Tcp <= to; Tcp += step) {
    const SSE = sseAt(readings, Tcp);
    if (SSE < best.SSE) best = { Tcp, SSE };
  }
  compareWithCase(check, best);
});

/** Error of the best 3PC with a given change point: two normal equations by hand. */
function sseAt({ outdoorC, energyKwh }: EnergyReadings, changeC: number): number {
  const h = outdoorC.map((tempC) => Math.max(0, tempC - changeC));
  const n = h.length;
  const sum = (of: (i: number) => number): number => h.reduce((total, _, i) => total + of(i), 0);
  const [sh, shh] = [sum((i) => h[i] as number), sum((i) => (h[i] as number) ** 2)];
  const [sy, shy] = [sum((i) => energyKwh[i] as number), sum((i) => (h[i] as number) * (energyKwh[i] as number))];
  const coolingSlope = (n * shy - sh * sy) / (n * shh - sh * sh);
  return sseOf(
    { kind: "3PC", base: (sy - coolingSlope * sh) / n, coolingSlope, coolingChangeC: changeC },
    { outdoorC, energyKwh },
  );
}

type ScipyFit = { kind: ModelKind; sse: number; standardErrors: number[]; onReading: boolean };
const scipy = JSON.parse(
  readFileSync(new URL("../../../fixtures/energy-model/change-point-fits.json", import.meta.url), "utf8"),
) as {
  sets: { name: string; T: number[]; y: number[]; fits: ScipyFit[] }[];
  student: { df: number; level: number; quantile: number; tail: number }[];
};

test.each(scipy.sets)("does no worse than scipy's grid and Nelder-Mead for any kind of model: $name", (set) => {
  const readings = readingsOf(set);
  expect(set.fits.map((each) => each.kind).sort()).toEqual([...MODEL_KINDS].sort());
  for (const { kind, sse } of set.fits) {
    const own = sseOf(fitted(kind, readings), readings);
    expect(own / sse, kind).toBeLessThanOrEqual(1 + 1e-9);
    // Nelder-Mead with a dozen starts comes as close as this; much better would mean that another model was fitted.
    expect(own / sse, kind).toBeGreaterThan(1 - 2e-3);
  }
});

test("gives the standard errors of a Jacobian by differences, widened by the residuals' autocorrelation", () => {
  let compared = 0;
  for (const set of scipy.sets) {
    const readings = readingsOf(set);
    for (const { kind, sse, standardErrors, onReading } of set.fits) {
      const { model, goodness, errors } = candidateOf(fitted(kind, readings), readings, "day");
      if (onReading || errors === null || Math.abs(goodness.sse / sse - 1) > 1e-9) continue;
      const widening = Math.sqrt(goodness.n / goodness.effectiveN);
      const own = errors.standardErrors;
      const names = {
        "2P": ["base", "slope"],
        "3PC": ["base", "coolingSlope", "coolingChangeC"],
        "3PH": ["base", "heatingSlope", "heatingChangeC"],
        "4P": ["base", "leftSlope", "rightSlope", "changeC"],
        "5P": ["base", "heatingSlope", "coolingSlope", "heatingChangeC", "coolingChangeC"],
      }[model.kind];
      for (const [i, name] of names.entries()) {
        const value = own[name as keyof typeof own] as number;
        expect(value / ((standardErrors[i] as number) * widening), `${set.name} ${kind} ${name}`).toBeCloseTo(1, 4);
        compared++;
      }
    }
  }
  expect(compared).toBeGreaterThan(60);
});

test("gives scipy's quantiles and tails of Student's t", () => {
  for (const { df, level, quantile, tail } of scipy.student) {
    expect(studentTwoSidedQuantile(level, df) / quantile).toBeCloseTo(1, 9);
    expect(studentTwoSided(quantile, df) / tail).toBeCloseTo(1, 8);
  }
});

const twoWings = fc.record({
  temps: fc.array(fc.integer({ min: -100, max: 350 }), { minLength: 8, maxLength: 40 }),
  noise: fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 40, maxLength: 40 }),
});

test("no pair of readings as change points is better than what the search found", () => {
  fc.assert(
    fc.property(twoWings, ({ temps, noise }) => {
      const T = temps.map((each) => each / 10);
      const y = T.map(
        (temp, i) => 100 + 2 * Math.max(0, 8 - temp) + 3 * Math.max(0, temp - 16) + (noise[i] as number) / 5,
      );
      const readings = readingsOf({ T, y });
      const model = fitModel("5P", readings);
      const distinct = [...new Set(T)].sort((a, b) => a - b);
      if (model === null) return distinct.length < 5;
      const own = sseOf(model, readings);
      for (let i = 1; i < distinct.length - 1; i++)
        for (let j = i; j < distinct.length - 1; j++) {
          const sse = sseOfPair(readings, distinct[i] as number, distinct[j] as number);
          if (sse < own - 1e-7 * (1 + sse)) return false;
        }
      return true;
    }),
    { seed: 20_261_129, numRuns: 150 },
  );
});

test.each([3, 60])("nor among thousands of temperatures, no two alike, with noise of %d", (noise) => {
  const random = seededRandom(11);
  const T = Array.from({ length: 1600 }, (_, i) => 12 + 12 * Math.sin(i / 255) + 6 * normalPair(random)[0]);
  const y = T.map((t) => 100 + 2 * Math.max(0, 8 - t) + 3 * Math.max(0, t - 16) + noise * normalPair(random)[0]);
  const readings = readingsOf({ T, y });
  const model = fitted("5P", readings);
  if (model.kind !== "5P") throw new Error("another kind");
  const own = sseOf(model, readings);
  const distinct = [...new Set(T)].sort((a, b) => a - b);
  expect(distinct.length).toBeGreaterThan(1200);
  const at = (temp: number): number => distinct.findIndex((each) => each >= temp);
  const [p, q] = [at(model.heatingChangeC), at(model.coolingChangeC)];
  const coarse = Array.from({ length: 32 }, (_, k) => 1 + Math.round((k * (distinct.length - 4)) / 31));
  const pairs = coarse.flatMap((i) => coarse.filter((j) => j >= i).map((j) => [i, j] as const));
  for (let i = p - 4; i <= p + 3; i++) for (let j = q - 4; j <= q + 3; j++) if (i >= 1 && j >= i) pairs.push([i, j]);
  for (const [i, j] of pairs)
    expect(
      sseOfPair(readings, distinct[i] as number, distinct[Math.min(j, distinct.length - 2)] as number),
    ).toBeGreaterThan(own * (1 - 1e-9));
});

/** Error of the best 5P with given change points, by Gram-Schmidt: an independent way to solve it. */
function sseOfPair({ outdoorC, energyKwh }: EnergyReadings, th: number, tc: number): number {
  const columns = [
    outdoorC.map(() => 1),
    outdoorC.map((t) => Math.max(0, th - t)),
    outdoorC.map((t) => Math.max(0, t - tc)),
  ];
  const basis: Float64Array[] = [];
  let rest = Float64Array.from(energyKwh);
  const dot = (a: Float64Array, b: Float64Array): number =>
    a.reduce((sum, each, i) => sum + each * (b[i] as number), 0);
  const without = (from: Float64Array, of: Float64Array): Float64Array => {
    const share = dot(from, of) / dot(of, of);
    return from.map((each, i) => each - share * (of[i] as number));
  };
  for (const column of columns) {
    const left = basis.reduce(without, column);
    if (dot(left, left) < 1e-9) continue;
    basis.push(left);
    rest = Float64Array.from(without(rest, left));
  }
  return dot(rest, rest);
}

test("recovers a model without noise, however far energy and temperature lie from 0", () => {
  const T = Array.from({ length: 200 }, (_, i) => 280 + (i % 50) * 0.8);
  const y = T.map((temp) => 1e6 + 40 * Math.max(0, 290 - temp) + 25 * Math.max(0, temp - 303.3));
  const model = fitted("5P", readingsOf({ T, y }));
  expect(named(model)).toMatchObject({
    b0: expect.closeTo(1e6, 2),
    bH: expect.closeTo(40, 4),
    bC: expect.closeTo(25, 4),
  });
  expect(named(model)).toMatchObject({ Th: expect.closeTo(290, 4), Tc: expect.closeTo(303.3, 4) });
});

test("has no model for too few temperatures, and refuses readings without their temperature", () => {
  const few = readingsOf({ T: [5, 5, 20, 20], y: [1, 2, 3, 4] });
  expect(fitModel("2P", few)).not.toBeNull();
  for (const kind of ["3PC", "3PH", "4P", "5P"] as const) expect(fitModel(kind, few)).toBeNull();
  expect(() => fitModel("2P", readingsOf({ T: [5, 6, 7], y: [1, 2] }))).toThrow(/its temperature/);
});

test.each(loadCheckValues<{ y: number[]; yhat: number[]; p: number[] }>("energy-model/goodness").cases)(
  "judges a model by Guideline 14's definitions: $name",
  (check) => {
    const { y, yhat, p } = check.inputs;
    const of = p.map((each) => goodnessOf(y, yhat, each));
    compareWithCase(check, {
      NMBE_pct: of.map((each) => each.nmbe * 100),
      CVRMSE_pct: of.map((each) => each.cvRmse * 100),
    });
  },
);

test("refuses to judge a model by fewer readings than it has parameters", () => {
  expect(() => goodnessOf([1, 2, 3], [1, 2, 3], 3)).toThrow(RangeError);
  expect(() => goodnessOf([1, -1, 1, -1], [0, 0, 0, 0], 2)).toThrow(/mean of 0/);
});
