import { describe, expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed, ComponentId } from "@/lib/overcooling/assessment";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { exact, step } from "@/lib/overcooling/calculation/quantity";
import { type ComponentModel, tierModel } from "@/lib/overcooling/component-model";
import type { Working } from "@/lib/working/working";
import { workingsIn } from "./evaluate-formula";
import { heater, office, zone } from "./offices";
import { plantedMeter } from "./planted-meter";

const ok = (input: AssessmentInput): Assessed => {
  const result = assessBuilding(input);
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};
const component = (result: Assessed, id: ComponentId) => result.components.find((each) => each.id === id);
const money = (result: Assessed, id: ComponentId): number => component(result, id)?.statedValue ?? 0;
const electric = (result: Assessed, ids: readonly ComponentId[]): number =>
  ids.reduce((sum, id) => sum + (component(result, id)?.electricKwh ?? 0), 0);
const small = (changes: Partial<AssessmentInput>) => office({ floorAreaM2: 140, draws: 300, ...changes });
const withoutRecords = (input: AssessmentInput): AssessmentInput => ({
  ...input,
  zones: input.zones.map((each) => ({ ...each, annual: null, exposure: null })),
});
const share = (working: Working, symbol: string): number =>
  workingsIn(working).find((each) => each.result.symbol === symbol)?.result.value ?? Number.NaN;

/** The eight rules of the reference, section I. Each test fails when its rule is taken out of the code. */
describe("nothing is counted twice", () => {
  test("rule 1: an hour has one state, and only its state's component counts it", () => {
    const states = {
      cooling: { hours: 900, depthK: 1 },
      deadband: { hours: 500, depthK: 1 },
      reheat: { hours: 300, depthK: 2 },
    };
    const of = (some: Partial<typeof states>) => ok(small({ zones: [zone(1, some)] }));
    const [cooling, deadband, reheat] = [
      of({ cooling: states.cooling }),
      of({ deadband: states.deadband }),
      of({ reheat: states.reheat }),
    ];
    expect([money(cooling, "deadband"), money(cooling, "reheat")]).toEqual([0, 0]);
    expect([money(deadband, "setpoint"), money(deadband, "reheat")]).toEqual([0, 0]);
    expect([money(reheat, "setpoint"), money(reheat, "deadband")]).toEqual([0, 0]);
    const all = of(states);
    expect(money(all, "setpoint")).toBeCloseTo(money(cooling, "setpoint"), 9);
    expect(money(all, "deadband")).toBeCloseTo(money(deadband, "deadband"), 9);
    expect(money(all, "reheat")).toBeCloseTo(money(reheat, "reheat"), 9);
  });

  test("rule 2: heaters come first and are left out of the gains that the setpoint is worked out with", () => {
    const bare = withoutRecords(office({ draws: 300 }));
    const zones = bare.zones.map((each) => ({ ...each, devices: [] }));
    const [withHeaters, without] = [ok(bare), ok({ ...bare, zones })];
    expect(money(withHeaters, "heater-energy")).toBeGreaterThan(0);
    for (const id of ["setpoint", "deadband", "reheat", "fan"] as const) {
      expect(money(withHeaters, id)).toBe(money(without, id));
    }
  });

  test("rule 3: a percentage a kelvin stands in place of setpoint, minimum airflow and fan", () => {
    const screened = ok(office({ draws: 300, weather: null }));
    expect(money(screened, "setpoint-screening")).toBeGreaterThan(0);
    for (const id of ["setpoint", "deadband", "reheat", "fan"] as const)
      expect(component(screened, id)).toBeUndefined();
    const cost = step({ symbol: "C", label: "c", unit: "USD", formula: "C = 1", terms: [], compute: () => 1 });
    const part = (id: ComponentId): ComponentModel => ({
      id,
      electric: exact({ symbol: "E", label: "e", unit: "kWh", value: 1, origin: "entered" }),
      heat: null,
      money: cost,
      cells: [],
      withElectricity: () => part(id),
    });
    expect(() => tierModel(0, [part("setpoint-screening"), part("fan")], "USD")).toThrow(/cannot be added/);
  });

  test("rule 4: the meter's saving is the total of what follows the zone air, and the model only splits it", () => {
    const below = ok(office({ draws: 300 }));
    const metered = ok(office({ draws: 300, meter: plantedMeter() }));
    expect(metered.tier.number).toBe(3);
    const fan = component(metered, "fan")?.working as Working;
    const [saving, whileCooling] = [share(fan, "S"), share(fan, "x_c")];
    expect(saving).toBeGreaterThan(0);
    expect(whileCooling).toBeGreaterThan(0);
    expect(whileCooling).toBeLessThan(1);
    // The fan at minimum airflow does not follow the zone air: it stays as it was modelled.
    const stays = electric(below, ["fan"]) * (1 - whileCooling);
    expect(electric(metered, ["setpoint", "deadband", "fan"])).toBeCloseTo(saving + stays, 6);
    const factor = saving / (electric(below, ["setpoint", "deadband"]) + electric(below, ["fan"]) * whileCooling);
    for (const id of ["setpoint", "deadband"] as const)
      expect(electric(metered, [id])).toBeCloseTo(factor * electric(below, [id]), 6);
    // The heaters' own energy is in the meter's base load and gas on a meter of its own; heat that is removed and air
    // that is cooled and reheated move no change point.
    for (const id of ["heater-energy", "heat-removal", "reheat", "demand", "complaints"] as const)
      expect(money(metered, id)).toBe(money(below, id));
    expect(metered.energy.electricKwh.stated).toBeCloseTo(
      saving + stays + electric(below, ["heater-energy", "heat-removal", "reheat"]),
      6,
    );
    expect(metered.lowerTiers.map((each) => each.tier)).toEqual([2, 1, 0]);
  });

  test("rule 5: measured reheat has the heaters' credit in it, so none is taken", () => {
    const states = { cooling: { hours: 900, depthK: 1 }, reheat: { hours: 600, depthK: 2 } };
    const measured = zone(1, states, { devices: [heater(1)] });
    const exposure = measured.exposure as NonNullable<typeof measured.exposure>;
    const modelled = { ...measured, exposure: { ...exposure, hasTrend: { ...exposure.hasTrend, reheatValve: false } } };
    expect(component(ok(small({ zones: [measured] })), "heat-removal")?.heatKwh).toBeNull();
    // By hand: 360 kWh, 0.6 in overcooled hours, 600 of 1,500 h in reheat, efficiency 0.75.
    expect(component(ok(small({ zones: [modelled] })), "heat-removal")?.heatKwh).toBeCloseTo(
      (-360 * 0.6 * (600 / 1500)) / 0.75,
      9,
    );
  });

  test("rule 6: a blended price has the demand charge in it, so no demand line is added", () => {
    const priced = (demandPricePerKw: number | null) =>
      ok(
        office({
          draws: 300,
          electricity: {
            kind: "blended",
            pricePerKwh: 0.1,
            demandPricePerKw,
            demandMonths: 5,
            pricedHours: null,
            demandYear: null,
          },
        }),
      );
    expect(component(priced(12), "demand")).toBeUndefined();
    expect(priced(12).headline).toEqual(priced(null).headline);
  });

  test("rule 7: what exists is not all avoidable: heaters given up and changes kept, each by its own share", () => {
    const states = { cooling: { hours: 900, depthK: 1 } };
    const { avoidable, statedTotal } = ok(
      small({ complaint: null, zones: [zone(1, states, { devices: [heater(1)] })] }),
    );
    const all = ok(small({ complaint: null, zones: [zone(1, states, { devices: [heater(1)] })] }));
    // Half of the heaters; changes undone once in 3 years last 3·(1 - e^(-1/3)) = 85.04 % of the first year.
    const kept = 3 * (1 - Math.exp(-1 / 3));
    const heaters = money(all, "heater-energy") + money(all, "heat-removal");
    const changes = money(all, "setpoint") + money(all, "fan");
    expect(avoidable.stated).toBeCloseTo(0.5 * heaters + kept * changes + 0.5 * money(all, "demand"), 9);
    expect(avoidable.stated).toBeLessThan(statedTotal);
    expect(avoidable.p90).toBeLessThanOrEqual(all.headline.p90);
  });

  test("rule 8: a zone with a fix in progress keeps its cost and is promised no second saving", () => {
    const states = { cooling: { hours: 900, depthK: 1 }, deadband: { hours: 300, depthK: 1 } };
    const zones = [1, 2, 3].map((id) => zone(id, states, { devices: [heater(id)], coldReportsPerYear: 2 }));
    const open = ok(office({ floorAreaM2: 420, draws: 300, zones }));
    const begun = zones.map((each) => ({ ...each, fixInProgress: each.zoneId === 2 }));
    const oneBegun = ok(office({ floorAreaM2: 420, draws: 300, zones: begun }));
    expect(oneBegun.statedTotal).toBe(open.statedTotal);
    expect(oneBegun.avoidable.stated).toBeCloseTo((open.avoidable.stated * 2) / 3, 9);
    expect(oneBegun.avoidable.zonesLeftOut).toEqual(["1-02"]);
    const allBegun = ok(
      office({ floorAreaM2: 420, draws: 300, zones: zones.map((z) => ({ ...z, fixInProgress: true })) }),
    );
    expect(allBegun.avoidable.stated).toBe(0);
  });
});
