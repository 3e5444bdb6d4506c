import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import { blindRules, type RuleNeed } from "@/lib/trends/diagnosis/blind-rules";
import { diagnoseZone } from "@/lib/trends/diagnosis/diagnose-zone";
import { hoursWith, RULE_TRENDS, type RuleTrend, trendPresence } from "@/lib/trends/diagnosis/trend-presence";
import type { CauseCode, ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import type { ZoneGrids } from "@/lib/trends/zone-grids";
import { LIMITS, scenarioEvidence, scenarioGrids } from "../../../support/zone-scenario";

const GRID_OF: Record<RuleTrend, keyof ZoneGrids> = {
  "cooling-setpoint": "coolingSetpointC",
  "heating-setpoint": "heatingSetpointC",
  airflow: "airflowM3ps",
  "damper-position": "damperPct",
  "reheat-valve": "reheatValvePct",
  "discharge-air-temp": "dischargeAirTempC",
  "supply-air-temp": "supplyAirTempC",
};

/** Zones in which a rule names its cause. */
const SHOWN: Partial<Record<CauseCode, Parameters<typeof scenarioGrids>[0]>> = {
  "setpoint-too-low": () => ({ zoneAirTempC: 21.5, coolingSetpointC: 21.4 }),
  "minimum-airflow-overcooling": () => ({ zoneAirTempC: 21.5, airflowM3ps: 0.1, damperPct: 30 }),
  "reheat-at-minimum": () => ({ zoneAirTempC: 20.1, airflowM3ps: 0.1, reheatValvePct: 40, dischargeAirTempC: 18 }),
  "airflow-above-command": () => ({ zoneAirTempC: 22, damperPct: 20, airflowM3ps: 0.3 }),
  "reheat-valve-leaking": () => ({ dischargeAirTempC: 20 }),
  "reheat-without-heat": () => ({ zoneAirTempC: 19, reheatValvePct: 100, airflowM3ps: 0.1 }),
  "short-of-air": () => ({ zoneAirTempC: 25, airflowM3ps: 0.4 }),
  "narrow-deadband": ({ i }) => ({
    heatingSetpointC: 22,
    reheatValvePct: i % 4 < 2 ? 40 : 0,
    airflowM3ps: i % 4 < 2 ? 0.1 : 0.3,
  }),
  "setpoint-stepped-down": ({ week }) => ({ coolingSetpointC: week < 3 ? 23.2 : 21.8 }),
  "setback-not-followed": () => ({ coolingSetpointC: 27 }),
};
const CASES = Object.entries(SHOWN) as [CauseCode, Parameters<typeof scenarioGrids>[0]][];

function seen(grids: ZoneGrids, more: Partial<ZoneEvidence> = {}) {
  const evidence = scenarioEvidence(grids, more);
  const presence = trendPresence(grids, coolingSeasonMask(grids, 13));
  const blind = new Map(blindRules({ presence, ...evidence }).map(({ code, lacks }) => [code, lacks]));
  return { causes: diagnoseZone(evidence).causes.map(({ code }) => code), blind };
}

const without = (grids: ZoneGrids, trend: RuleTrend): ZoneGrids => ({ ...grids, [GRID_OF[trend]]: null });

describe("rules that cannot be judged", () => {
  it.each(CASES)(
    "%s: is never called blind where it names its cause, and is where a trend it lacks silences it",
    (code, at) => {
      const grids = scenarioGrids(at);
      const all = seen(grids);
      expect(all.causes).toContain(code);
      expect([...all.blind.keys()]).not.toContain(code);
      const silencing: RuleTrend[] = [];
      for (const trend of RULE_TRENDS) {
        const { causes, blind } = seen(without(grids, trend));
        if (blind.has(code)) {
          silencing.push(trend);
          expect(causes, `${code} named without ${trend}`).not.toContain(code);
          expect(blind.get(code)).toEqual([trend]);
        }
      }
      // The table asks for every trend whose want silences the rule, but for the states and setbacks of others.
      const silent = RULE_TRENDS.filter((trend) => !seen(without(grids, trend)).causes.includes(code));
      if (code !== "narrow-deadband") expect(silencing).toEqual(silent);
      else expect(silent).toEqual(expect.arrayContaining(silencing));
    },
  );

  it("blames a limit of the zone's record that nobody entered", () => {
    const grids = scenarioGrids(() => ({}));
    const lacks = (limits: ZoneEvidence["limits"]): Map<CauseCode, RuleNeed[]> => seen(grids, { limits }).blind;
    expect([...lacks({ ...LIMITS, designAirflowM3ps: null })]).toEqual([
      ["single-maximum", ["design-airflow"]],
      ["short-of-air", ["design-airflow"]],
    ]);
    expect(lacks({ ...LIMITS, minimumAirflowM3ps: null }).get("setpoint-too-low")).toEqual(["minimum-airflow"]);
  });

  it("blames a setpoint of two days among thirty, and nothing that is recorded throughout", () => {
    const grids = scenarioGrids(() => ({}), 5);
    const csp = grids.coolingSetpointC?.map((each, i) => (i >= 2 * 96 ? Number.NaN : each)) ?? null;
    const { blind } = seen({ ...grids, coolingSetpointC: csp });
    for (const code of ["setpoint-too-low", "minimum-airflow-overcooling", "short-of-air"] as const)
      expect(blind.get(code)).toEqual(["cooling-setpoint"]);
    expect(blind.has("reheat-at-minimum")).toBe(false);
  });

  it("calls no rule blind for want of a trend when the whole record is too short for any", () => {
    const grids = scenarioGrids(() => ({}));
    const { blind } = seen({
      ...grids,
      zoneAirTempC: grids.zoneAirTempC.map((each, i) => (i < 48 ? each : Number.NaN)),
    });
    expect([...blind.keys()].filter((code) => code !== "setpoint-stepped-down")).toEqual([]);
  });

  it("never calls a rule blind that names its cause, whatever is lost of the trends", () => {
    const [shown, lost] = [
      fc.constantFrom(...CASES),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 7, maxLength: 7 }),
    ];
    fc.assert(
      fc.property(shown, lost, ([, at], keptShares) => {
        const grids = scenarioGrids(at);
        const cut = Object.fromEntries(
          RULE_TRENDS.map((trend, k) => {
            const values = grids[GRID_OF[trend]] as Float64Array | null;
            const until = (keptShares[k] as number) * grids.grid.count;
            return [GRID_OF[trend], values?.map((each, i) => (i < until ? each : Number.NaN)) ?? null];
          }),
        );
        const { causes, blind } = seen({ ...grids, ...cut });
        for (const code of causes) expect(blind.has(code), code).toBe(false);
      }),
      { numRuns: 40 },
    );
  });
});

it("counts the hours with some trends by what is recorded together", () => {
  const grids = scenarioGrids(() => ({}), 1);
  const half = grids.airflowM3ps?.map((each, i) => (i % 2 === 0 ? each : Number.NaN)) ?? null;
  const presence = trendPresence({ ...grids, airflowM3ps: half, damperPct: null }, coolingSeasonMask(grids, 13));
  expect(hoursWith(presence, [])).toBe(50);
  expect(hoursWith(presence, ["airflow", "reheat-valve"])).toBe(25);
  expect(hoursWith(presence, ["damper-position"])).toBe(0);
});
