import { expect, test } from "vitest";
import { SYSTEM_TYPES } from "@/lib/assumptions/system-type";
import { assessBuilding, modelBuilding } from "@/lib/overcooling/assess-building";
import { runStudy } from "@/lib/overcooling/calculation/study";
import { sanityGates } from "@/lib/overcooling/sanity-gates";
import { workingsIn } from "./evaluate-formula";
import { defaults, office } from "./offices";

const estimate = (systemType: (typeof SYSTEM_TYPES)[number]) =>
  office({
    draws: 300,
    systemType,
    zones: office().zones.map((each) => ({ ...each, annual: null, exposure: null })),
  });

/** Percent a kelvin by its own arithmetic: 42.6 kWh/m² of an average office, 1.5 K. */
const percentOf = (systemType: (typeof SYSTEM_TYPES)[number]): number => {
  const result = assessBuilding(estimate(systemType));
  if (result.status !== "ok") throw new Error("the office is assessed");
  const kwh = result.components
    .filter((each) => ["setpoint", "deadband", "reheat", "fan"].includes(each.id))
    .reduce((sum, each) => sum + (each.electricKwh ?? 0), 0);
  return 100 * (1 - (1 - kwh / (42.6 * 36 * 140)) ** (1 / 1.5));
};

test.each(SYSTEM_TYPES)("percent a kelvin lies in the published range, or a finding explains it: %s", (systemType) => {
  const { low, high } = defaults().find((each) => each.id === `setpoint-percent-per-kelvin/${systemType}`) as {
    low: number;
    high: number;
  };
  const percent = percentOf(systemType);
  const result = assessBuilding(estimate(systemType));
  const codes = result.findings.map((each) => each.code);
  const said = percent > high ? "percent-above-published" : percent < low ? "percent-below-published" : null;
  expect(codes.filter((each) => /-published$/.test(each))).toEqual(said ? [said] : []);
});

/**
 * What simulations and trials found a kelvin of cooling setpoint to save of cooling and fan electricity [%], by kind of
 * system: Hoyt, Arens & Zhang 2015 (VAV with low minimums 10.4 linear, "little" with the minimums left high), an energy-management
 * handbook's 3.6, and brackets about them (judgement) for systems between and for single zones.
 */
const PUBLISHED = {
  "vav-reheat-high-minimum": [0, 4],
  "vav-reheat-low-minimum": [4, 12],
  "vav-reheat-minimum-unknown": [0, 10],
  "single-zone-dx": [3, 10],
  "fan-coil": [3, 10],
  "heat-pump": [3, 10],
} as const satisfies Record<(typeof SYSTEM_TYPES)[number], readonly [number, number]>;

test.each(SYSTEM_TYPES)(
  "a kelvin of setpoint saves a published share of the office's own cooling and fan: %s",
  (systemType) => {
    const input = estimate(systemType);
    const { headline } = modelBuilding(input);
    const whileCooling = headline.zoneAir?.fanWhileCooling ?? null;
    const study = runStudy([headline.total, ...(whileCooling ? [whileCooling] : [])], input);
    const result = assessBuilding(input);
    if (result.status !== "ok") throw new Error("the office is assessed");
    const workings = result.components.flatMap(({ working }) => workingsIn(working));
    const value = (symbol: string): number =>
      workings.find((each) => each.result.symbol === symbol)?.result.value ??
      workings.flatMap(({ terms }) => terms).find((each) => each.symbol === symbol)?.value ??
      0;
    const kwh = (id: string): number => result.components.find((each) => each.id === id)?.electricKwh ?? 0;
    // The season's cooling load at the present setpoint by the plant's COP, and the fan at its present airflow.
    const used = value("Q_0") / value("COP") + value("w_f") * value("V_des") * value("H_s") * value("f_0");
    const saved = kwh("setpoint") + (whileCooling ? study.stated(whileCooling) * kwh("fan") : 0);
    const percentPerK = 100 * (1 - (1 - saved / used) ** (1 / 1.5));
    const [low, high] = PUBLISHED[systemType];
    expect(percentPerK).toBeGreaterThanOrEqual(low);
    expect(percentPerK).toBeLessThanOrEqual(high);
  },
);

const gate = (hvacKwh: number, presentCoolingSetpointC = 21) =>
  sanityGates(office({ floorAreaM2: 1000, presentCoolingSetpointC }), {
    tier: 1,
    headline: { p10: 1, p50: 2, p90: 3 },
    electricKwh: { p10: 0, p50: 0, p90: 0 },
    hvacKwh,
    setpointKwh: hvacKwh / 4,
    measuredAreaShare: 0,
    lowerTiers: [],
    widestInputs: [],
  })
    .filter((each) => /-published$/.test(each.code))
    .map((each) => [
      each.code,
      Math.round(each.evidence.percentPerK as number),
      Math.round(each.evidence.setpointPct as number),
    ]);

// High minimums: 0 to 4 % a kelvin. By hand: 8,520 of 42,600 kWh is 20 % for 2 K, 10.6 % a kelvin.
test("names a percentage above what was published, with the setpoint's part, and none inside", () => {
  expect(gate(8520)).toEqual([["percent-above-published", 11, 25]]);
  expect(gate(2000)).toEqual([]);
  expect(gate(8520, 22.8)).toEqual([]);
});
