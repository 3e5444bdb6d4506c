import { describe, expect, it } from "vitest";
import { draughtRatePct, draughtSpeedMps } from "@/lib/comfort/draught-rate";
import {
  type Asymmetry,
  dissatisfiedByAsymmetry,
  dissatisfiedByFloor,
  dissatisfiedByGradient,
  dissatisfiedByLayers,
  type LocalDissatisfied,
} from "@/lib/comfort/local-discomfort";
import { operativeTempC } from "@/lib/comfort/operative-temperature";
import { voteOf } from "@/lib/comfort/predicted-mean-vote";
import { compareWithCase, loadCheckValues } from "../../support/check-values";
import { conditionOf, type Inputs } from "./conditions";

const pctOf = (result: LocalDissatisfied) => ({ pd: result.status === "ok" ? result.pct : "none" });

describe("draught", () => {
  type Air = { ta: number; v: number; turbulence: number };
  for (const check of loadCheckValues<Air>("comfort/draught-rate").cases)
    it(check.name, () => {
      const { ta, v, turbulence } = check.inputs;
      compareWithCase(check, { dr: draughtRatePct({ airTempC: ta, airSpeedMps: v, turbulencePct: turbulence }) });
    });
  for (const check of loadCheckValues<{ ta: number; turbulence: number; dr: number }>("comfort/draught-speed").cases)
    it(check.name, () => {
      const { ta, turbulence, dr } = check.inputs;
      compareWithCase(check, { vMax: draughtSpeedMps(dr, { airTempC: ta, turbulencePct: turbulence }) });
    });
  it("takes 40 % turbulence where none was measured, and is none in still air", () => {
    const air = { airTempC: 22, airSpeedMps: 0.2 };
    expect(draughtRatePct(air)).toBe(draughtRatePct({ ...air, turbulencePct: 40 }));
    expect(draughtRatePct({ airTempC: 22, airSpeedMps: 0.03 })).toBe(0);
  });
});

describe("parts of the body", () => {
  for (const check of loadCheckValues<{ dT: number }>("comfort/dissatisfied-layers").cases)
    it(check.name, () => compareWithCase(check, pctOf(dissatisfiedByLayers(check.inputs.dT))));
  for (const check of loadCheckValues<{ tf: number }>("comfort/dissatisfied-floor").cases)
    it(check.name, () => compareWithCase(check, pctOf(dissatisfiedByFloor(check.inputs.tf))));
  for (const check of loadCheckValues<{ surface: Asymmetry; dT: number }>("comfort/dissatisfied-asymmetry").cases)
    it(check.name, () => compareWithCase(check, pctOf(dissatisfiedByAsymmetry(check.inputs.surface, check.inputs.dT))));
  for (const check of loadCheckValues<Inputs & { gradient: number }>("comfort/dissatisfied-gradient").cases)
    it(check.name, () =>
      compareWithCase(check, {
        pd: dissatisfiedByGradient(check.inputs.gradient, voteOf(conditionOf(check.inputs)).pmv),
      }),
    );
  it("say nothing beyond the range of their model", () => {
    expect(dissatisfiedByLayers(8).status).toBe("outside-limits");
    expect(dissatisfiedByFloor(Number.NaN).status).toBe("outside-limits");
    expect(dissatisfiedByAsymmetry("cool-wall", 15)).toEqual({ status: "outside-limits", low: 0, high: 15 });
  });
});

describe("operative temperature", () => {
  for (const check of loadCheckValues<{ ta: number; tr: number; v: number }>("comfort/operative-temperature").cases)
    it(check.name, () => {
      const { ta, tr, v } = check.inputs;
      compareWithCase(check, { to: operativeTempC({ airTempC: ta, radiantTempC: tr, airSpeedMps: v }) });
    });
});
