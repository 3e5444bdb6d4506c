import { describe, expect, it } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed } from "@/lib/overcooling/assessment";
import type { AssessmentInput, ProvenSaving } from "@/lib/overcooling/assessment-input";
import { overcoolingFindingWords } from "@/lib/overcooling/findings";
import { proofsApart } from "@/lib/overcooling/proofs-apart";
import { evaluateFormula, workingsIn } from "./evaluate-formula";
import { office } from "./offices";
import { plantedMeter } from "./planted-meter";

const ok = (input: AssessmentInput): Assessed => {
  const result = assessBuilding(input);
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};

/** A proof of a change of which the model makes 40 kWh a day without heaters, and 5 kWh with them. */
const proof = (changes: Partial<ProvenSaving> = {}): ProvenSaving => ({
  proposalId: 7,
  title: "Second floor, warmer",
  foundOn: "2026-11-30",
  meter: "main meter",
  days: 60,
  measuredKwh: 45,
  standardErrorKwh: 0,
  modelledAirKwh: 40,
  parts: ["setpoint", "deadband", "fan"],
  heatersKwh: { value: 5, low: 5, high: 5 },
  riseK: 1,
  expectedRiseK: 1,
  window: { from: "2026-05-05", to: "2026-07-31" },
  ...changes,
});

const verified = (changes: Partial<ProvenSaving> = {}): Assessed =>
  ok(office({ draws: 400, proofs: [proof(changes)] }));
const below = ok(office({ draws: 400 }));
const part = (of: Assessed, id: string) => of.components.find((each) => each.id === id);
const kwhOf = (of: Assessed, ids: readonly string[]): number =>
  ids.reduce((sum, id) => sum + (part(of, id)?.electricKwh ?? 0), 0);

describe("a cost with a proof", () => {
  it("is tier 4, names the proof, and has the methods below beside it", () => {
    const { tier, verifiedBy, lowerTiers } = verified();
    expect(tier).toEqual({ number: 4, label: "verified by “Second floor, warmer”" });
    expect(verifiedBy).toEqual([{ proposalId: 7, title: "Second floor, warmer", foundOn: "2026-11-30" }]);
    expect(lowerTiers.map((each) => each.tier)).toEqual([2, 1, 0]);
    expect(lowerTiers[0]?.p50).toBeCloseTo(below.headline.p50, 6);
    const metered = ok(office({ draws: 400, proofs: [proof()], meter: plantedMeter() }));
    expect(metered.lowerTiers.map((each) => each.tier)).toEqual([3, 2, 1, 0]);
  });

  it("stands as modelled where the proof measured what the model makes of the change", () => {
    expect(verified().statedTotal).toBeCloseTo(below.statedTotal, 6);
  });

  it("is moved by what was measured over what was modelled, in the components that the change acts on alone", () => {
    const twice = verified({ measuredKwh: 85 });
    for (const id of ["setpoint", "deadband", "fan"]) expect(kwhOf(twice, [id])).toBeCloseTo(2 * kwhOf(below, [id]), 6);
    for (const id of ["heater-energy", "heat-removal", "reheat", "complaints"])
      expect(part(twice, id)?.statedValue).toBeCloseTo(part(below, id)?.statedValue ?? Number.NaN, 6);
  });

  it("counts a kelvin: half of the rise with half of the saving proves the same", () => {
    expect(verified({ measuredKwh: 25, riseK: 0.5 }).statedTotal).toBeCloseTo(below.statedTotal, 6);
  });

  it("takes the proof's interval for its range and leaves plant and heat loss out of it", () => {
    const widthOf = (of: Assessed): number => {
      const { p10 = 0, p90 = 0, statedValue = 1 } = part(of, "setpoint") ?? {};
      return (p90 - p10) / statedValue;
    };
    const parts = ["setpoint"] as const;
    expect(widthOf(below)).toBeGreaterThan(0.3);
    expect(widthOf(verified({ parts }))).toBeCloseTo(0, 6);
    // P10 and P90 of a symmetric triangle lie 1 - sqrt(0.2) of its half-width, sqrt(6) deviations, from its middle.
    const expected = (2 * Math.sqrt(6) * (1 - Math.sqrt(0.2)) * 12) / 40;
    expect(widthOf(verified({ parts, standardErrorKwh: 12 }))).toBeCloseTo(expected, 1);
  });

  it("has workings that can be worked out again from their printed terms", () => {
    const { components, working } = verified({ measuredKwh: 60, standardErrorKwh: 4 });
    const all = [working, ...components.map((each) => each.working)].flatMap(workingsIn);
    expect(all.some((each) => each.result.symbol === "S")).toBe(true);
    for (const each of all) {
      if (each.terms.length === 0) continue;
      const again = evaluateFormula(each);
      if (again !== null) expect(again, each.formula).toBeCloseTo(each.result.value, 4);
    }
  });

  it("counts a kWh of the meter once: proofs over the same days verify nothing, and say so", () => {
    const windows = [
      { from: "2026-05-05", to: "2026-07-31" },
      { from: "2026-07-31", to: "2026-09-30" },
      { from: "2025-05-05", to: "2025-07-31" },
      null,
    ];
    const all = windows.map((window, k) => proof({ proposalId: k + 1, title: `Change ${k + 1}`, window }));
    const { proofs, onSameDays } = proofsApart(all);
    expect(onSameDays).toEqual(["Change 1", "Change 2"]);
    expect(proofs.map(({ title }) => title)).toEqual(["Change 3", "Change 4"]);
    const { findings } = ok(office({ draws: 400, proofsOnSameDays: onSameDays }));
    const found = findings.find(({ code }) => code === "proofs-on-same-days");
    if (!found) throw new Error("nothing was found");
    expect(overcoolingFindingWords(found).what).toMatch(/Change 1, Change 2 read the same days/);
  });

  it("stays at the tier below where no zone has a record, or nothing of what was proved is in the cost", () => {
    const bare = office({ draws: 400, proofs: [proof()] });
    const zones = bare.zones.map((each) => ({ ...each, annual: null, exposure: null }));
    expect(ok({ ...bare, zones }).tier.number).toBe(1);
    expect(verified({ parts: [] }).tier.number).toBe(2);
  });
});
