import { expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed } from "@/lib/overcooling/assessment";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { office, zone } from "./offices";
import { plantedMeter } from "./planted-meter";

const ok = (input: AssessmentInput): Assessed => {
  const result = assessBuilding(input);
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};
const withoutRecords = (input: AssessmentInput): AssessmentInput => ({
  ...input,
  zones: input.zones.map((each) => ({ ...each, annual: null, exposure: null })),
});

test("a lower tier beside the headline is the figure that it gives zone by zone as the headline", () => {
  const { lowerTiers } = ok(office({ draws: 400 }));
  const alone = [withoutRecords(office({ draws: 400 })), office({ draws: 400, weather: null })].map(ok);
  alone.forEach(({ headline }, k) => {
    for (const p of ["p10", "p50", "p90"] as const) expect(lowerTiers[k]?.[p]).toBeCloseTo(headline[p], 6);
  });
});

test("lower tiers stand beside the headline, and ranges that do not meet are called inconsistent", () => {
  const result = ok(office({ draws: 400 }));
  expect(result.lowerTiers.map((each) => each.tier)).toEqual([1, 0]);
  const far = ok(
    office({
      draws: 1000,
      presentCoolingSetpointC: 16.5,
      complaint: null,
      zones: office().zones.map((each) => zone(each.zoneId, { cooling: { hours: 1900, depthK: 0.1 } })),
    }),
  );
  const finding = far.findings.find((each) => each.code === "inconsistent");
  expect(finding?.evidence.widestInputs).toHaveLength(3);
});

test("a meter that says far more than the zones is called inconsistent with them, with what moves the figure most", () => {
  const zones = office().zones.map((each) => zone(each.zoneId, { cooling: { hours: 1900, depthK: 1 } }));
  const apart = (slopes: number) => {
    const result = ok(office({ draws: 1000, complaint: null, zones, meter: plantedMeter(slopes) }));
    expect(result.tier.number).toBe(3);
    return { result, finding: result.findings.find((each) => each.evidence.otherTier === 2) };
  };
  expect(apart(1).finding).toBeUndefined();
  const { result, finding } = apart(40);
  expect(finding).toMatchObject({ code: "inconsistent", evidence: { tier: 3, otherTier: 2 } });
  expect(finding?.evidence.widestInputs).toEqual(result.tornado.slice(0, 3).map((each) => each.label));
});
