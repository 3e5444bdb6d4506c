import { describe, expect, it } from "vitest";
import { temperatureAt } from "@/lib/comfort/comfort-zone";
import { type StopRule, type TrialRecord, warmDissatisfiedPct, watchRules } from "@/lib/proposals/stop-rules";

const RULES = { hotReportsPerWeek: 3, dissatisfiedPct: 15, zoneAirTempC: 25.5 };
const NOTHING: TrialRecord = { hotReports: [], zoneDays: [] };
const stateOf = (rule: StopRule, record: Partial<TrialRecord>, rules = RULES) => {
  const found = watchRules(rules, { ...NOTHING, ...record }).find((each) => each.rule === rule);
  if (!found) throw new Error("no such rule");
  return found;
};
const days = (zone: string, temps: readonly number[], from = 1) =>
  temps.map((meanC, k) => ({ zone, date: `2026-06-${String(from + k).padStart(2, "0")}`, meanC }));

describe("hot reports of a week", () => {
  it("break their rule when the limit is reached within any seven days, on the day that they do", () => {
    const { broken, highest } = stateOf("hot-reports", { hotReports: ["2026-06-04", "2026-06-07", "2026-06-10"] });
    expect(broken).toMatchObject({ figure: 3, on: "2026-06-10" });
    expect(highest?.figure).toBe(3);
  });

  it("hold it one report short of the limit, and on the eighth day", () => {
    expect(stateOf("hot-reports", { hotReports: ["2026-06-04", "2026-06-05"] }).broken).toBeNull();
    const spread = stateOf("hot-reports", { hotReports: ["2026-06-04", "2026-06-07", "2026-06-11"] });
    expect(spread).toMatchObject({ broken: null, highest: { figure: 2 } });
  });
});

describe("a zone's mean of a day", () => {
  it("breaks its rule at the limit and not a hundredth below, in the zone and on the day that were first", () => {
    expect(stateOf("zone-air", { zoneDays: days("2-14", [25, 25.49]) }).broken).toBeNull();
    const record = { zoneDays: [...days("2-14", [25, 25.5, 26]), ...days("2-15", [24, 24, 27])] };
    expect(stateOf("zone-air", record)).toMatchObject({
      broken: { figure: 25.5, on: "2026-06-02", zone: "2-14" },
      highest: { figure: 27, on: "2026-06-03", zone: "2-15" },
    });
  });
});

describe("predicted dissatisfied", () => {
  const summer = { relAirSpeedMps: 0.1, relHumidityPct: 50, metabolicRateMet: 1.1, clothingClo: 0.5 };
  /** A vote of +0.5 leaves 10.2 % dissatisfied (ISO 7730:2005, table A.1 gives 10 % for class B). */
  const warmC = temperatureAt(0.5, summer) ?? Number.NaN;
  const limitPct = 100 - 95 * Math.exp(-0.03353 * 0.5 ** 4 - 0.2179 * 0.5 ** 2);

  it("are those who are too warm: a cold zone, where as many may be dissatisfied, breaks nothing", () => {
    expect(warmDissatisfiedPct(warmC)).toBeCloseTo(limitPct, 2);
    expect(warmDissatisfiedPct(19)).toBe(5);
  });

  it("break their rule by the warmest zone's mean of a week at the limit, and not just below", () => {
    const rules = { ...RULES, dissatisfiedPct: limitPct };
    const at = (meanC: number) =>
      stateOf(
        "dissatisfied",
        { zoneDays: [...days("1-01", [22, 22, 22]), ...days("2-14", [meanC, meanC, meanC])] },
        rules,
      );
    expect(at(warmC + 0.001).broken).toMatchObject({ zone: "2-14", on: "2026-06-03" });
    expect(at(warmC - 0.01).broken).toBeNull();
  });

  it("wait for three days, and forget what is older than a week", () => {
    const rules = { ...RULES, dissatisfiedPct: limitPct };
    const hot = warmC + 1;
    expect(stateOf("dissatisfied", { zoneDays: days("2-14", [hot, hot]) }, rules)).toMatchObject({
      broken: null,
      highest: null,
    });
    const cooled = [...days("2-14", [hot, hot]), ...days("2-14", [22, 22, 22], 9)];
    expect(stateOf("dissatisfied", { zoneDays: cooled }, rules).broken).toBeNull();
  });
});
