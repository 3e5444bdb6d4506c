import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diagnoseZone, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { trendFindingWords } from "@/lib/trends/findings";
import { diagnoseScenario, scenarioEvidence, scenarioGrids } from "../../../support/zone-scenario";

const codes = (diagnosis: ZoneDiagnosis): string[] => diagnosis.causes.map((each) => each.code);

describe("the degree-hours behind a lever", () => {
  // Reheat all day half-way between the setpoints: neither row 7 nor row 8 sees it, the verdict does.
  const halfway = { zoneAirTempC: 21.6, airflowM3ps: 0.1, damperPct: 30, reheatValvePct: 40, dischargeAirTempC: 18 };
  const lowSetpoint = { zoneAirTempC: 21.5, coolingSetpointC: 21.4 };

  it("are given when no detailed rule speaks for the lever", () => {
    const diagnosis = diagnoseScenario(() => halfway);
    expect(diagnosis.verdict).toBe("minimum-airflow-first");
    expect(codes(diagnosis)).toEqual(["degree-hours-at-minimum"]);
    // 300 h at 1.4 K under the target of 23 °C.
    expect(diagnosis.causes[0]?.evidence).toMatchObject({ reheatHours: 300, coolingHours: 0, deadbandHours: 0 });
    expect(diagnosis.causes[0]?.evidence.reheatKh).toBeCloseTo(420, 9);
    expect(diagnosis.causes[0]?.evidence.totalKh).toBeCloseTo(420, 9);
    const cause = diagnosis.causes[0];
    if (!cause) throw new Error("no cause");
    expect(trendFindingWords(cause).what).toBe(
      "Zone 2-14 fell short of 23.0 °C by 1.4 K on average over 300 h: 100 % of it at minimum airflow or in reheat (300 h), 0 % while cooling (0.0 h).",
    );
  });

  it("are given for cooling without a setpoint trend", () => {
    const grids = scenarioGrids(() => lowSetpoint);
    const diagnosis = diagnoseZone(scenarioEvidence({ ...grids, coolingSetpointC: null }));
    expect(diagnosis.verdict).toBe("setpoint-first");
    expect(codes(diagnosis)).toEqual(["degree-hours-in-cooling"]);
    expect(diagnosis.raisingSetpointHelps).toBe("unknown");
  });

  it("leave out a lever of two that holds hardly any of them", () => {
    // Cooling at the target in 80 % of the hours; all of the shortfall at minimum: both levers by the thresholds.
    const diagnosis = diagnoseScenario(({ hour }) => (hour < 16 ? {} : halfway));
    expect(diagnosis.verdict).toBe("both-minimum-first");
    expect(codes(diagnosis)).toEqual(["degree-hours-at-minimum"]);
  });

  it("no lever comes without a cause, whatever the air, the setpoint, the airflow and the valve", () => {
    const lever = ["setpoint-first", "minimum-airflow-first", "both-minimum-first"];
    let levers = 0;
    const half = fc.record({
      zoneAirTempC: fc.double({ min: 19, max: 24, noNaN: true }),
      coolingSetpointC: fc.double({ min: 20.5, max: 25, noNaN: true }),
      airflowM3ps: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
      reheatValvePct: fc.constantFrom(0, 3, 40),
    });
    fc.assert(
      fc.property(half, half, fc.integer({ min: 8, max: 18 }), (first, second, change) => {
        const { verdict, causes } = diagnoseScenario(({ hour }) => (hour < change ? first : second));
        if (!lever.includes(verdict)) return true;
        levers++;
        return causes.some(({ evidence }) => Number(evidence.hours ?? evidence.totalKh ?? evidence.weeks) > 0);
      }),
      { seed: 7, numRuns: 30 },
    );
    expect(levers).toBeGreaterThan(10);
  });
});
