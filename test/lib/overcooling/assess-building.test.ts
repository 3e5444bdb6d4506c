import { describe, expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed, ComponentId } from "@/lib/overcooling/assessment";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { OVERCOOLING_FINDING_CODES, overcoolingFindingWords } from "@/lib/overcooling/findings";
import { workingsIn } from "./evaluate-formula";
import { defaults, heater, held, office, zone } from "./offices";

const ok = (input: AssessmentInput): Assessed => {
  const result = assessBuilding(input);
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};
const stated = (result: Assessed, id: ComponentId): number | undefined =>
  result.components.find((each) => each.id === id)?.statedValue;
const codes = (result: { findings: { code: string }[] }): string[] => result.findings.map((each) => each.code);
const withoutRecords = (input: AssessmentInput): AssessmentInput => ({
  ...input,
  zones: input.zones.map((each) => ({ ...each, annual: null, exposure: null })),
});
/** One zone with nothing in it but hours by state. */
const bare = (states: Parameters<typeof zone>[1], changes: Partial<AssessmentInput> = {}): AssessmentInput =>
  office({ floorAreaM2: 140, zones: [zone(1, states)], draws: 500, ...changes });

const TIERS: [name: string, input: AssessmentInput][] = [
  ["measured zones, modelled plant", office({ draws: 400 })],
  ["estimate", withoutRecords(office({ draws: 400 }))],
  ["screening", office({ draws: 400, weather: null })],
];

describe.each(TIERS)("%s", (label, input) => {
  const result = ok(input);

  test("carries the label of its method", () => expect(result.tier.label).toBe(label));

  test("its components and its zones each add up to the headline's P50, and to the stated total", () => {
    const total = (each: { contribution: number }[]): number => each.reduce((sum, one) => sum + one.contribution, 0);
    expect(total(result.components)).toBeCloseTo(result.headline.p50, 8);
    expect(total(result.zones)).toBeCloseTo(result.headline.p50, 8);
    const sum = (each: { statedValue: number }[]): number => each.reduce((all, one) => all + one.statedValue, 0);
    expect(sum(result.components)).toBeCloseTo(result.statedTotal, 8);
    expect(sum(result.zones)).toBeCloseTo(result.statedTotal, 8);
  });

  test("zones and components are two views of one table", () => {
    for (const component of result.components) {
      const cells = result.zones.flatMap((each) =>
        each.byComponent.filter((cell) => cell.componentId === component.id),
      );
      expect(cells.reduce((sum, each) => sum + each.contribution, 0)).toBeCloseTo(component.contribution, 8);
      expect(cells.reduce((sum, each) => sum + each.statedValue, 0)).toBeCloseTo(component.statedValue, 8);
    }
    for (const each of result.zones) {
      expect(each.byComponent.reduce((sum, cell) => sum + cell.contribution, 0)).toBeCloseTo(each.contribution, 10);
    }
  });

  test("every figure is a finite number and its range is in order", () => {
    expect(result.headline.p10).toBeLessThan(result.headline.p50);
    expect(result.headline.p50).toBeLessThan(result.headline.p90);
    for (const each of [...result.components, ...result.zones]) {
      expect(Number.isFinite(each.statedValue) && Number.isFinite(each.contribution)).toBe(true);
      expect(each.p10).toBeLessThanOrEqual(each.p90);
    }
    for (const line of result.tornado)
      expect(Number.isFinite(line.lowTotal) && Number.isFinite(line.highTotal)).toBe(true);
  });

  test("the same seed gives the same figures, another seed nearly the same", () => {
    expect(ok(input)).toEqual(result);
    const other = ok({ ...input, seed: 7 });
    expect(other.headline).not.toEqual(result.headline);
    expect(Math.abs(other.headline.p50 / result.headline.p50 - 1)).toBeLessThan(0.06);
    expect(other.statedTotal).toBe(result.statedTotal);
  });

  test("every finding has its sentence", () => {
    for (const each of result.findings) {
      const { what } = overcoolingFindingWords(each);
      expect(what).not.toMatch(/undefined|NaN|null|\[object/);
      expect(OVERCOOLING_FINDING_CODES).toContain(each.code);
    }
  });
});

test("no overcooling, no heaters and no reports cost nothing", () => {
  const result = ok(
    bare({ cooling: { hours: 1900, depthK: 0 } }, { assumptions: defaults({ "zone-sensor-offset": held(0) }) }),
  );
  expect(result.headline).toEqual({ p10: 0, p50: 0, p90: 0 });
  expect(result.statedTotal).toBe(0);
});

test("a sensor's offset can only find overcooling where air was recorded below the target", () => {
  expect(ok(bare({ cooling: { hours: 1900, depthK: 0 } })).headline.p90).toBe(0);
});

test("the cost of an estimate rises with the target", () => {
  const totals = [21.5, 22, 22.5, 23, 23.5, 24].map((targetZoneAirTempC) =>
    ok(withoutRecords(office({ targetZoneAirTempC, draws: 300 }))),
  );
  for (let k = 1; k < totals.length; k++) {
    expect(totals[k]?.statedTotal).toBeGreaterThan(totals[k - 1]?.statedTotal as number);
    expect(totals[k]?.headline.p50).toBeGreaterThan(totals[k - 1]?.headline.p50 as number);
  }
});

test("the cost of a measured zone rises with its depth below the target, in each state", () => {
  for (const state of ["cooling", "deadband"] as const) {
    const costs = [0.2, 0.6, 1.2, 2].map((depthK) => ok(bare({ [state]: { hours: 900, depthK } })).statedTotal);
    for (let k = 1; k < costs.length; k++) expect(costs[k]).toBeGreaterThan(costs[k - 1] as number);
  }
});

test("hours of a fault are told and never priced", () => {
  const states = { cooling: { hours: 900, depthK: 1 } };
  const [without, withFault] = [ok(bare(states)), ok(bare({ ...states, fault: { hours: 500, depthK: 3 } }))];
  expect(withFault.headline).toEqual(without.headline);
  expect(codes(withFault)).toContain("fault-hours-not-priced");
  expect(codes(without)).not.toContain("fault-hours-not-priced");
});

test("a state counts once: cooling hours carry no minimum airflow, the others no setpoint", () => {
  const cooling = ok(bare({ cooling: { hours: 900, depthK: 1 } }));
  expect(stated(cooling, "deadband")).toBe(0);
  expect(stated(cooling, "reheat")).toBe(0);
  const minimum = ok(bare({ deadband: { hours: 900, depthK: 1 }, reheat: { hours: 300, depthK: 2 } }));
  expect(stated(minimum, "setpoint")).toBe(0);
  expect(stated(minimum, "deadband")).toBeGreaterThan(0);
  expect(stated(minimum, "reheat")).toBeGreaterThan(0);
});

test("hours whose state is not told are split by the assumed shares, and said so", () => {
  const result = ok(bare({ undetermined: { hours: 1000, depthK: 1 } }));
  const told = ok(
    bare({
      cooling: { hours: 400, depthK: 1 },
      deadband: { hours: 350, depthK: 1 },
      reheat: { hours: 250, depthK: 1 },
    }),
  );
  expect(stated(result, "setpoint")).toBeCloseTo(stated(told, "setpoint") as number, 9);
  expect(stated(result, "deadband")).toBeCloseTo(stated(told, "deadband") as number, 9);
  expect(codes(result)).toContain("undetermined-hours-split");
});

test("a blended price goes without a demand line and is worth less than its face", () => {
  const blended = ok(
    office({
      draws: 300,
      electricity: {
        kind: "blended",
        pricePerKwh: 0.1,
        demandPricePerKw: null,
        demandMonths: null,
        pricedHours: null,
        demandYear: null,
      },
    }),
  );
  expect(stated(blended, "demand")).toBeUndefined();
  const marginal = ok(
    office({
      draws: 300,
      electricity: {
        kind: "marginal",
        pricePerKwh: 0.1,
        demandPricePerKw: null,
        demandMonths: null,
        pricedHours: null,
        demandYear: null,
      },
    }),
  );
  expect(stated(blended, "setpoint")).toBeCloseTo(0.8 * (stated(marginal, "setpoint") as number), 9);
  expect(codes(blended)).toContain("demand-inside-blended-price");
  const withDemand = ok(
    office({
      draws: 300,
      electricity: {
        kind: "blended",
        pricePerKwh: 0.1,
        demandPricePerKw: 12,
        demandMonths: 5,
        pricedHours: null,
        demandYear: null,
      },
    }),
  );
  expect(withDemand.headline).toEqual(blended.headline);
});

test("measured reheat leaves no credit for reheat that heaters replace", () => {
  const states = { cooling: { hours: 900, depthK: 1 }, reheat: { hours: 600, depthK: 2 } };
  const measured = zone(1, states, { devices: [heater(1)] });
  const valveless = {
    ...measured,
    exposure: measured.exposure && {
      ...measured.exposure,
      hasTrend: { ...measured.exposure.hasTrend, reheatValve: false },
    },
  };
  const removal = (each: typeof measured) =>
    ok(office({ floorAreaM2: 140, zones: [each], draws: 300 })).components.find((c) => c.id === "heat-removal");
  expect(removal(measured)?.heatKwh).toBeNull();
  expect(removal(valveless)?.heatKwh).toBeCloseTo((-360 * 0.6 * 0.4) / 0.75, 9);
});

test("complaints are priced by the building's own hours and labour price, or not at all", () => {
  const unpriced = ok(office({ draws: 300, complaint: null }));
  expect(stated(unpriced, "complaints")).toBeUndefined();
  expect(codes(unpriced)).toContain("complaint-price-missing");
  const reports = office().zones.reduce((sum, each) => sum + each.coldReportsPerYear, 0);
  expect(
    stated(ok(office({ draws: 300, complaint: { hours: 0.5, labourPricePerHour: 40 } })), "complaints"),
  ).toBeCloseTo(reports * 20, 9);
});

test("an exact part keeps its exact figure in the headline", () => {
  const complaints = ok(office({ draws: 400 })).components.find((each) => each.id === "complaints");
  expect(complaints?.contribution).toBeCloseTo(complaints?.statedValue as number, 9);
});

test("personal fans and heaters that cannot be true are left out, with a word about it", () => {
  const devices = [heater(1), { ...heater(2), kind: "personal-fan" as const }, { ...heater(3, 20_000) }];
  const result = ok(
    office({ floorAreaM2: 140, draws: 300, zones: [zone(1, { cooling: { hours: 900, depthK: 1 } }, { devices })] }),
  );
  expect(stated(result, "heater-energy")).toBeCloseTo(360 * 0.6 * 0.085, 9);
  expect(codes(result)).toEqual(expect.arrayContaining(["fans-not-counted", "heater-energy-impossible"]));
});

test("a heater with hours at a setting of unknown power is named", () => {
  const devices = [{ ...heater(1), settingsWithoutPower: ["low-heat"] }];
  const zones = [zone(1, { cooling: { hours: 900, depthK: 1 } }, { devices })];
  const { findings } = ok(office({ floorAreaM2: 140, draws: 300, zones }));
  expect(findings.find((each) => each.code === "heater-power-unknown")?.evidence).toMatchObject({
    settings: ["low-heat"],
  });
});

test("common random numbers: raising one zone's cost leaves the others' draws alone", () => {
  const [before, after] = [office({ draws: 400 }), office({ draws: 400 })];
  const zones = after.zones.map((each) =>
    each.zoneId === 5 ? { ...each, coldReportsPerYear: each.coldReportsPerYear + 10 } : each,
  );
  const [one, other] = [ok(before), ok({ ...after, zones })];
  for (const each of one.zones) {
    const same = other.zones.find((candidate) => candidate.zoneId === each.zoneId);
    expect(same?.p90).toBeCloseTo(each.p90 + (each.zoneId === 5 ? 550 : 0), 8);
  }
  expect(other.headline.p50 - one.headline.p50).toBeCloseTo(550, 8);
});

test("electric reheat counts as electricity at its price", () => {
  const electric = ok(office({ draws: 300, heatingFuel: "electricity" }));
  const gas = ok(office({ draws: 300 }));
  expect(electric.energy.heatKwh.stated).toBe(0);
  expect(electric.energy.electricKwh.stated).toBeCloseTo(
    gas.energy.electricKwh.stated + 0.75 * gas.energy.heatKwh.stated,
    6,
  );
});

test("heat without a price is left out of the money and stays in the energy", () => {
  const unpriced = ok(office({ draws: 300, heatPricePerKwh: null }));
  expect(codes(unpriced)).toContain("heat-price-missing");
  expect(unpriced.energy.heatKwh.stated).toBeGreaterThan(0);
  expect(unpriced.statedTotal).toBeLessThan(ok(office({ draws: 300 })).statedTotal);
});

test("zones without an area share what is left, and area without a zone has a row of its own", () => {
  const [a, b] = [zone(1, { cooling: { hours: 900, depthK: 1 } }), zone(2, { cooling: { hours: 900, depthK: 1 } })];
  const shared = ok(office({ draws: 300, floorAreaM2: 500, zones: [{ ...a, floorAreaM2: null }, b] }));
  expect(shared.zones.map((each) => each.floorAreaM2)).toEqual([360, 140]);
  expect(codes(shared)).toContain("zone-area-shared");
  const partly = ok(office({ draws: 300, floorAreaM2: 500, zones: [a, b] }));
  expect(partly.zones.at(-1)).toMatchObject({
    zoneId: null,
    code: "rest of the building",
    floorAreaM2: 220,
    measured: false,
  });
  expect(codes(partly)).toContain("zones-without-record");
});

test("a zone with a unit of its own has no minimum airflow to pay for, whatever serves the rest of the building", () => {
  const states = { cooling: { hours: 900, depthK: 1 }, deadband: { hours: 500, depthK: 2 } };
  const box = zone(1, states, { devices: [heater(1)] });
  const exposure = box.exposure as NonNullable<typeof box.exposure>;
  const packaged = { ...box, exposure: { ...exposure, hasTrend: { ...exposure.hasTrend, coolingStage: true } } };
  const cost = (zones: AssessmentInput["zones"]) => ok(office({ floorAreaM2: 280, draws: 300, zones }));
  const [asBox, asUnit] = [cost([box, zone(2, states)]), cost([packaged, zone(2, states)])];
  const parts = (result: Assessed, code: string) =>
    Object.fromEntries(
      result.zones
        .find((each) => each.code === code)
        ?.byComponent.map((each) => [each.componentId, each.statedValue]) ?? [],
    );
  expect(parts(asBox, "1-01").deadband).toBeGreaterThan(0);
  expect(Object.keys(parts(asUnit, "1-01"))).toEqual(["heater-energy", "heat-removal", "setpoint", "demand"]);
  expect(parts(asUnit, "1-01").setpoint).toBe(parts(asBox, "1-01").setpoint);
  expect(parts(asUnit, "1-02").deadband).toBe(parts(asBox, "1-02").deadband);
  // By hand: 360 kWh, 0.6 of it in overcooled hours; removed in the 900 of 1,400 h in which the unit cools, COP 3.3.
  const m = workingsIn(asUnit.components[1]?.working ?? asUnit.working).find((each) => each.result.symbol === "m");
  expect(stated(asUnit, "heat-removal")).toBeCloseTo(
    (360 * 0.6 * (900 / 1400) * (m?.result.value ?? 0) * 0.085) / 3.3,
    9,
  );
  const idle = asUnit.findings.find((each) => each.code === "idle-hours-not-priced");
  expect(idle?.evidence).toEqual({ zones: ["1-01"], hours: 500, overcoolingKh: 1000 });
  expect(codes(asBox)).not.toContain("idle-hours-not-priced");
});

test("without weather and setpoint only heaters and reports are counted, and said to be all", () => {
  const result = ok(office({ draws: 300, weather: null, presentCoolingSetpointC: null }));
  expect(result.components.map((each) => each.id)).toEqual(["heater-energy", "heat-removal", "demand", "complaints"]);
  expect(codes(result)).toEqual(
    expect.arrayContaining(["weather-missing", "setpoint-missing", "only-heaters-and-reports"]),
  );
});

test("gives no figure, rather than nought, for a building of which nothing is known", () => {
  const unknown = office({ draws: 400, weather: null, presentCoolingSetpointC: null, zones: [] });
  const result = assessBuilding(unknown);
  expect(result.status).toBe("blocked");
  expect(codes(result)).toEqual(["nothing-known"]);
  expect(assessBuilding({ ...unknown, presentCoolingSetpointC: 22 }).status).toBe("ok");
});
