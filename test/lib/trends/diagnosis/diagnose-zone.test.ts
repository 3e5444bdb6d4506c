import { describe, expect, it } from "vitest";
import { diagnoseZone, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { CAUSE_CODES } from "@/lib/trends/diagnosis/zone-evidence";
import { TREND_FINDING_CODES, trendFindingWords } from "@/lib/trends/findings";
import { quantityWords } from "@/lib/trends/quantity-words";
import { MONDAY } from "../../../support/zone-grids";
import {
  diagnoseScenario,
  INTERVALS_A_WEEK,
  LIMITS,
  report,
  scenarioEvidence,
  scenarioGrids,
} from "../../../support/zone-scenario";

const codes = (diagnosis: ZoneDiagnosis): string[] => diagnosis.causes.map((each) => each.code);

/** A zone that drifts under its cooling setpoint at minimum airflow. */
const atMinimum = { zoneAirTempC: 21.5, airflowM3ps: 0.1, damperPct: 30 };
/** A zone held by a cooling setpoint of 21.4 °C. */
const lowSetpoint = { zoneAirTempC: 21.5, coolingSetpointC: 21.4 };
const inReheat = {
  zoneAirTempC: 20.1,
  airflowM3ps: 0.1,
  damperPct: 30,
  reheatValvePct: 40,
  dischargeAirTempC: 18,
};

describe("levers (zone verdict of the decision table)", () => {
  it("a zone held at the target by cooling is healthy", () => {
    expect(diagnoseScenario(() => ({}))).toEqual({
      verdict: "healthy",
      causes: [],
      missingPoints: [],
      raisingSetpointHelps: "no",
    });
  });

  it("row 13: a low setpoint comes first and raising it helps", () => {
    const diagnosis = diagnoseScenario(() => lowSetpoint, { reports: [report("A", -2, 21.5), report("B", -2, 21.5)] });
    expect(diagnosis.verdict).toBe("setpoint-first");
    expect(codes(diagnosis)).toEqual(["setpoint-too-low"]);
    expect(diagnosis.causes[0]?.evidence).toMatchObject({
      hours: 300,
      ofHours: 300,
      setpointC: 21.4,
      coldDesks: ["A", "B"],
    });
    expect(diagnosis.raisingSetpointHelps).toBe("yes");
  });

  it("row 8: drift at minimum airflow is for the minimum, and raising the setpoint does not help", () => {
    const diagnosis = diagnoseScenario(() => atMinimum);
    expect(diagnosis.verdict).toBe("minimum-airflow-first");
    expect(codes(diagnosis)).toEqual(["minimum-airflow-overcooling"]);
    expect(diagnosis.raisingSetpointHelps).toBe("no");
  });

  it("row 7: reheat at minimum airflow is for the minimum", () => {
    const diagnosis = diagnoseScenario(() => inReheat);
    expect(diagnosis.verdict).toBe("minimum-airflow-first");
    expect(codes(diagnosis)).toEqual(["reheat-at-minimum"]);
    expect(diagnosis.raisingSetpointHelps).toBe("no");
  });

  it("between the two thresholds both levers are named, minimum first", () => {
    // 60 % of the hours in cooling with two thirds of the degree-hours: neither 0.7 nor 0.5 is met.
    const diagnosis = diagnoseScenario(({ hour }) => (hour < 14 ? lowSetpoint : { ...atMinimum, zoneAirTempC: 21.9 }));
    expect(diagnosis.verdict).toBe("both-minimum-first");
    expect(diagnosis.raisingSetpointHelps).toBe("partly");
  });

  it.each([
    ["airflow", { airflowM3ps: undefined }, ["airflow"]],
    ["valve", { reheatValvePct: undefined }, ["reheat-valve"]],
  ] as const)("a cold zone without its %s trend is undetermined and the point is named", (_, gone, missingPoints) => {
    const grids = scenarioGrids(() => lowSetpoint);
    const point = Object.keys(gone)[0] as "airflowM3ps" | "reheatValvePct";
    const diagnosis = diagnoseZone(scenarioEvidence({ ...grids, [point]: null }));
    expect(diagnosis).toMatchObject({ verdict: "undetermined", missingPoints, raisingSetpointHelps: "unknown" });
  });

  it("a cold zone without a minimum airflow is undetermined", () => {
    const diagnosis = diagnoseScenario(() => lowSetpoint, {
      limits: { minimumAirflowM3ps: null, designAirflowM3ps: 0.4 },
    });
    expect(diagnosis).toMatchObject({ verdict: "undetermined", missingPoints: ["airflow-setpoint"] });
  });

  it("a record with no occupied cooling-season hours is undetermined", () => {
    const grids = scenarioGrids(() => lowSetpoint);
    grids.outdoorAirTempC?.fill(5);
    expect(diagnoseZone(scenarioEvidence(grids)).verdict).toBe("undetermined");
  });
});

describe("faults come before levers", () => {
  const offset = {
    zoneId: 7,
    group: "floor" as const,
    neighbours: 11,
    floatOffsetK: 1.3,
    floatHours: 400,
    occupiedOffsetK: 0.1,
  };
  const coldAtTarget = [..."ABCDEFG"].map((desk) => report(desk, -2, 23.3));

  it("row 1: a reading that drifts off its neighbours at night, with cold reports at target, is a sensor", () => {
    const diagnosis = diagnoseScenario(() => ({}), { offset, reports: coldAtTarget });
    expect(diagnosis.verdict).toBe("fault-first");
    expect(codes(diagnosis)).toEqual(["sensor-bias", "cold-reports-at-target"]);
    expect(diagnosis.raisingSetpointHelps).toBe("no");
  });

  it("row 1: an offset under 1.5 K alone is named but gives no verdict", () => {
    const diagnosis = diagnoseScenario(() => ({}), { offset });
    expect(codes(diagnosis)).toEqual(["sensor-bias"]);
    expect(diagnosis.verdict).toBe("healthy");
    expect(diagnoseScenario(() => ({}), { offset: { ...offset, floatOffsetK: 1.8 } }).verdict).toBe("fault-first");
  });

  it("row 1: what people feel counts for a suspect sensor only when it is what the sensor hides", () => {
    // Four of four by luck: one in sixteen. Three of three: one in eight.
    const four = (vote: number) => ["A", "B", "C", "D"].map((desk) => report(desk, vote, 22));
    const verdictOf = (floatOffsetK: number, reports: ReturnType<typeof four>) =>
      diagnoseScenario(() => ({}), { offset: { ...offset, floatOffsetK, occupiedOffsetK: 0 }, reports }).verdict;
    expect(verdictOf(1.3, four(-2))).toBe("fault-first");
    expect(verdictOf(-1.3, four(2))).toBe("fault-first");
    expect(verdictOf(1.3, four(2))).not.toBe("fault-first");
    expect(verdictOf(-1.3, four(-2))).not.toBe("fault-first");
    expect(verdictOf(1.3, four(-2).slice(1))).not.toBe("fault-first");
  });

  it("row 1: two heaters in a zone that does not read cold agree with a sensor that reads high", () => {
    const verdictOf = (floatOffsetK: number, heaterCount: number) =>
      diagnoseScenario(() => ({}), { offset: { ...offset, floatOffsetK, occupiedOffsetK: 0 }, heaterCount }).verdict;
    expect(verdictOf(1.3, 2)).toBe("fault-first");
    expect(verdictOf(1.3, 1)).toBe("healthy");
    expect(verdictOf(-1.3, 2)).toBe("healthy");
    expect(diagnoseScenario(() => atMinimum, { offset, heaterCount: 2 }).verdict).toBe("minimum-airflow-first");
  });

  it("row 1: an offset that is the day's own, fading, is no sensor fault", () => {
    const warmKept = { ...offset, occupiedOffsetK: 2 };
    expect(codes(diagnoseScenario(() => ({}), { offset: warmKept }))).toEqual([]);
    const coldKept = { ...offset, floatOffsetK: -1.3, occupiedOffsetK: -2 };
    expect(codes(diagnoseScenario(() => ({}), { offset: coldKept }))).toEqual([]);
    const readsLow = { ...offset, floatOffsetK: -1.3 };
    expect(codes(diagnoseScenario(() => ({}), { offset: readsLow }))).toEqual(["sensor-bias"]);
  });

  it("row 1: cold reports at target without an offset point to the desks", () => {
    const diagnosis = diagnoseScenario(() => ({}), { reports: coldAtTarget });
    expect(diagnosis.verdict).toBe("personal-need");
    expect(codes(diagnosis)).toEqual(["cold-reports-at-target"]);
  });

  it("row 3: cold mornings that recover by midday are a matter of the start", () => {
    const grids = scenarioGrids(({ hour }) => (hour < 10 ? { ...atMinimum, zoneAirTempC: 20.5 } : {}));
    for (let i = 0; i < grids.zoneAirTempC.length; i++) {
      const hour = (i % 96) / 4;
      if (hour >= 5 && hour < 8) grids.zoneAirTempC[i] = 20.3;
    }
    const diagnosis = diagnoseZone(scenarioEvidence(grids));
    expect(diagnosis.verdict).toBe("fault-first");
    expect(codes(diagnosis)).toContain("cold-start");
  });

  it("row 4: much air at a damper at minimum is a fault", () => {
    const diagnosis = diagnoseScenario(() => ({ zoneAirTempC: 21.5, airflowM3ps: 0.2, damperPct: 30 }));
    expect(diagnosis.verdict).toBe("fault-first");
    expect(codes(diagnosis)).toEqual(["airflow-above-command"]);
    expect(diagnosis.causes[0]?.evidence).toMatchObject({ hours: 300, ofHours: 300 });
  });

  it("row 4: single intervals of it are not (30 min persistence)", () => {
    const diagnosis = diagnoseScenario(({ i }) =>
      i % 3 === 0 ? { zoneAirTempC: 23, airflowM3ps: 0.2, damperPct: 30 } : {},
    );
    expect(codes(diagnosis)).toEqual([]);
  });

  it("row 5: warm discharge at a shut valve is a leak", () => {
    const diagnosis = diagnoseScenario(() => ({ ...atMinimum, dischargeAirTempC: 18 }));
    expect(diagnosis.verdict).toBe("fault-first");
    expect(codes(diagnosis)).toContain("reheat-valve-leaking");
    expect(diagnosis.causes[0]?.evidence.meanDifferenceK).toBeCloseTo(5, 9);
  });

  it("row 6: a full valve without heat is named, and the lever is the minimum with its degree-hours", () => {
    const diagnosis = diagnoseScenario(() => ({
      ...inReheat,
      zoneAirTempC: 19.4,
      reheatValvePct: 100,
      dischargeAirTempC: 13.5,
    }));
    expect(codes(diagnosis)).toEqual(["reheat-without-heat", "degree-hours-at-minimum"]);
    expect(diagnosis.verdict).toBe("minimum-airflow-first");
  });
});

describe("setpoints", () => {
  const stepped = ({ week }: { week: number }) => (week < 3 ? {} : lowSetpoint);

  it("row 2: a step down that stays is found with its date", () => {
    const diagnosis = diagnoseScenario(stepped);
    const step = diagnosis.causes.find((each) => each.code === "setpoint-stepped-down");
    // The first low interval is Monday 08:00 of the fourth week.
    expect(step?.evidence).toMatchObject({
      beforeC: 23.2,
      afterC: 21.4,
      sinceUtcSeconds: MONDAY + 3 * 7 * 86400 + 8 * 3600,
    });
    expect(diagnosis.verdict).toBe("setpoint-first");
    expect(diagnosis.raisingSetpointHelps).toBe("yes");
  });

  it("row 2: a step within a week is dated to its day", () => {
    const diagnosis = diagnoseScenario(({ week, weekday }) =>
      week < 2 || (week === 2 && weekday < 3) ? {} : lowSetpoint,
    );
    const step = diagnosis.causes.find((each) => each.code === "setpoint-stepped-down");
    expect(step?.evidence.sinceUtcSeconds).toBe(MONDAY + (2 * 7 + 2) * 86400 + 8 * 3600);
  });

  it("row 2: a dip that was put back is not a step, nor one that half the building shared", () => {
    const dip = diagnoseScenario(({ week }) => (week === 2 || week === 3 ? lowSetpoint : {}));
    expect(codes(dip)).not.toContain("setpoint-stepped-down");
    const shared = diagnoseScenario(stepped, {
      neighbours: { zones: 4, medianCoolingSetbackK: 3.8, stepDownsUtcSeconds: Array(2).fill(MONDAY + 3 * 7 * 86400) },
    });
    expect(codes(shared)).not.toContain("setpoint-stepped-down");
  });

  it("row 2: a setpoint that ignores the setback of the others is a hold", () => {
    const grids = scenarioGrids(() => ({}));
    grids.coolingSetpointC?.fill(23.2);
    expect(codes(diagnoseZone(scenarioEvidence(grids)))).toEqual(["setback-not-followed"]);
    const alone = { zones: 8, medianCoolingSetbackK: 0, stepDownsUtcSeconds: [] };
    expect(codes(diagnoseZone(scenarioEvidence(grids, { neighbours: alone })))).toEqual([]);
  });

  it("row 12: setpoints close together with reheat and cooling in turn", () => {
    const diagnosis = diagnoseScenario(({ i }) => {
      const narrow = { coolingSetpointC: 23.2, heatingSetpointC: 22, zoneAirTempC: 22.6 };
      return i % 4 < 2 ? narrow : { ...narrow, airflowM3ps: 0.1, reheatValvePct: 30, dischargeAirTempC: 20 };
    });
    expect(codes(diagnosis)).toContain("narrow-deadband");
    const wide = diagnoseScenario(({ i }) => (i % 4 < 2 ? {} : { airflowM3ps: 0.1, reheatValvePct: 30 }));
    expect(codes(wide)).not.toContain("narrow-deadband");
  });
});

describe("people", () => {
  it("row 14: one cold desk in a healthy zone is a personal need", () => {
    const reports = [report("A", -2, 23.3), report("A", -3, 23.2), report("A", -2, 23.3), report("B", 0, 23.3)];
    const diagnosis = diagnoseScenario(() => ({}), { reports });
    expect(diagnosis).toMatchObject({ verdict: "personal-need", raisingSetpointHelps: "no" });
    expect(codes(diagnosis)).toEqual(["one-cold-desk"]);
  });

  it("row 14: two cold reports from one desk of six are luck, so are three of four; four of five are not", () => {
    // Chance that some desk sends them: 1/6; 9.7 %; 2.0 %.
    const verdictOf = (desks: string) =>
      diagnoseScenario(() => ({}), { reports: [...desks].map((desk) => report(desk, -2, 22.9)) }).verdict;
    expect(verdictOf("AA")).toBe("healthy");
    expect(verdictOf("AAAB")).toBe("healthy");
    expect(verdictOf("AAAAB")).toBe("personal-need");
    expect(verdictOf("AAABBCCD")).not.toBe("personal-need");
  });

  it("row 15: hot reports at the cooling setpoint with all the air there is", () => {
    const diagnosis = diagnoseScenario(() => ({ zoneAirTempC: 24, airflowM3ps: 0.4, damperPct: 100 }), {
      reports: [..."AABBCCD"].map((desk) => report(desk, 2)),
    });
    expect(diagnosis.verdict).toBe("too-hot");
    expect(codes(diagnosis)).toEqual(["short-of-air", "hot-reports"]);
  });

  it("a cold record with one cold desk is still a cold zone", () => {
    const diagnosis = diagnoseScenario(() => atMinimum, { reports: [report("A", -2, 21.5), report("A", -2, 21.5)] });
    expect(diagnosis.verdict).toBe("minimum-airflow-first");
    expect(codes(diagnosis)).not.toContain("one-cold-desk");
  });
});

describe("sentences", () => {
  it("stands for every cause, and names the zone in each", () => {
    for (const code of CAUSE_CODES) {
      expect(TREND_FINDING_CODES).toContain(code);
      const { what, action } = trendFindingWords({ code, severity: "caution", evidence: { zone: "2-14" } });
      expect(what).toContain("2-14");
      expect(action.length).toBeGreaterThan(20);
    }
  });

  it("tells what, how much and what to do, in the building's units", () => {
    const diagnosis = diagnoseScenario(() => atMinimum);
    const cause = diagnosis.causes[0];
    if (!cause) throw new Error("no cause");
    const { what, action } = trendFindingWords(cause, quantityWords("F", "UTC"));
    expect(what).toBe(
      "Zone 2-14 drifted below its cooling setpoint (73.8 °F) at minimum airflow (212 cfm, 25 % of design) with no call for cooling, for 300 h of 300 h (100 %).",
    );
    expect(action).toContain("engineer");
  });

  it("leaves nothing undefined in any sentence of a full scenario", () => {
    const evidence = scenarioEvidence(scenarioGrids(({ week }) => (week < 3 ? {} : lowSetpoint), 6));
    const findings = [...diagnoseZone(evidence).causes, ...evidence.exposure.findings];
    expect(findings.length).toBeGreaterThan(0);
    for (const finding of findings) {
      const { what, action } = trendFindingWords(finding);
      expect(`${what} ${action}`).not.toMatch(/undefined|NaN|null|unknown/);
    }
  });
});

it("the scenario is what its comment says", () => {
  const { exposure } = scenarioEvidence(scenarioGrids(() => ({})));
  expect(exposure.coolingSeasonHours).toBe(6 * 50);
  expect(INTERVALS_A_WEEK * 0.25).toBe(168);
  expect(LIMITS.minimumAirflowM3ps).toBeLessThan(0.25 / 1.1);
});
