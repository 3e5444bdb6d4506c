import { expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import { office, zone } from "./offices";

const assessed = () => {
  const zones = [zone(1, { cooling: { hours: 900, depthK: 1 } }), zone(2, { deadband: { hours: 500, depthK: 1 } })];
  const result = assessBuilding(office({ floorAreaM2: 280, draws: 300, zones }));
  if (result.status !== "ok") throw new Error("the office should be assessed");
  return result;
};

test("the headline's working lists every component and adds up to the stated total", () => {
  const { working, components, statedTotal } = assessed();
  expect(working.terms.map((term) => term.href)).toEqual(components.map((each) => `/working/${each.id}`));
  expect(working.terms.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(statedTotal, 9);
  expect(working.result.value).toBeCloseTo(statedTotal, 9);
});

test("energy and emissions open into workings of their stated values", () => {
  const { energy, emissionsKgCo2 } = assessed();
  for (const range of [energy.electricKwh, energy.heatKwh, emissionsKgCo2])
    expect(range.working.result.value).toBeCloseTo(range.stated, 9);
  const scopes = emissionsKgCo2.working.terms.map(({ working }) => {
    const [kwh, factor] = (working?.terms ?? []).map((term) => term.value) as [number, number];
    return kwh * factor;
  });
  expect(scopes).toHaveLength(2);
  expect((scopes[0] as number) + (scopes[1] as number)).toBeCloseTo(emissionsKgCo2.stated, 9);
  expect(emissionsKgCo2.working.terms.map((term) => /scope (\d)/.exec(term.label)?.[1])).toEqual(["2", "1"]);
});

test("every zone's working adds its components up to its stated cost", () => {
  for (const each of assessed().zones) {
    expect(each.working.terms.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(each.statedValue, 9);
  }
});
