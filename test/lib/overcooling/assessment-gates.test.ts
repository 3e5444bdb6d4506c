import { expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed } from "@/lib/overcooling/assessment";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { overcoolingFindingWords } from "@/lib/overcooling/findings";
import { defaults, held, office, zone } from "./offices";

const ok = (input: AssessmentInput): Assessed => {
  const result = assessBuilding(input);
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};
const codes = (result: { findings: { code: string }[] }): string[] => result.findings.map((each) => each.code);

test.each([
  ["floor-area-impossible", { floorAreaM2: 0 }],
  ["price-impossible", { heatPricePerKwh: -1 }],
  ["cop-implausible", { assumptions: defaults({ "cooling-cop/vav-reheat-high-minimum": held(9) }) }],
  ["air-temperatures-crossed", { assumptions: defaults({ "return-air-temp": held(14) }) }],
  ["target-impossible", { targetZoneAirTempC: 16 }],
  ["assumption-not-above-zero", { assumptions: defaults({ "required-airflow-fraction": held(0) }) }],
  ["weather-not-a-year", { weather: { dryBulbC: [20], occupied: [1] } }],
] satisfies [string, Partial<AssessmentInput>][])("blocks on %s", (code, changes) => {
  const result = assessBuilding(office({ draws: 300, ...changes }));
  expect(result.status).toBe("blocked");
  expect(codes(result)).toContain(code);
  for (const each of result.findings) expect(overcoolingFindingWords(each).action).not.toBe("");
});

test.each([
  ["zone-air-implausible", zone(1, { cooling: { hours: 900, depthK: 6.5 } })],
  ["record-without-hours", zone(1, {})],
  [
    "record-of-another-target",
    {
      ...zone(1, { cooling: { hours: 900, depthK: 1 } }),
      exposure: {
        ...(zone(1, {}).exposure as NonNullable<ReturnType<typeof zone>["exposure"]>),
        targetZoneAirTempC: 24,
      },
    },
  ],
])("leaves a record out: %s", (code, broken) => {
  const good = zone(2, { cooling: { hours: 900, depthK: 1 } });
  const result = ok(office({ draws: 300, floorAreaM2: 280, zones: [broken, good] }));
  expect(codes(result)).toContain(code);
  expect(result.zones.map((each) => each.measured)).toEqual([false, true]);
});

test("doubts more electricity a square metre than the average building loses", () => {
  const result = ok(
    office({
      floorAreaM2: 140,
      draws: 300,
      heatingFuel: "electricity",
      zones: [zone(1, { cooling: { hours: 1900, depthK: 5 }, reheat: { hours: 6000, depthK: 5 } })],
    }),
  );
  expect(codes(result)).toEqual(
    expect.arrayContaining(["electricity-above-national-estimate", "large-share-of-cooling-energy"]),
  );
});

test("doubts a percentage that the weather does not allow", () => {
  const percent = (value: number) =>
    ok(
      office({
        draws: 300,
        assumptions: defaults({ "setpoint-percent-per-kelvin/vav-reheat-high-minimum": held(value) }),
      }),
    );
  expect(codes(percent(40))).toContain("percent-beyond-weather");
  expect(codes(percent(4))).not.toContain("percent-beyond-weather");
});
