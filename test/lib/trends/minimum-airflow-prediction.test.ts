import { describe, expect, it } from "vitest";
import { demoSpan } from "@/db/seed/demo-calendar";
import { simulatePlan } from "@/db/seed/simulate-plan";
import { minimumAirflowPrediction, type PredictionInput } from "@/lib/trends/minimum-airflow-prediction";
import { simulated } from "@/test/db/seed/simulated-year";

const air = { hours: 200, zoneAirTempC: 20.8, supplyAirTempC: 13, dischargeAirTempC: 13.4, heatingSetpointC: 20 };
const input = (changes: Partial<PredictionInput> = {}): PredictionInput => ({
  airAtMinimum: { deadband: air, reheat: null },
  minimumAirflowM3ps: { value: 0.3, origin: "entered" },
  requiredAirflowM3ps: { value: 0.25, low: 0.2, high: 0.29, origin: "computed" },
  assumedSupplyAirTempC: { value: 12, origin: "default" },
  targetZoneAirTempC: { value: 23.5, origin: "entered" },
  readingsHref: "/zones/1#history",
  ...changes,
});

/** Just under the cooling setpoints of the simulated zones. */
const TARGET_C = 23.8;

describe("zone air at a lower minimum airflow", () => {
  it("is that of the reference's check, with its range and its working", () => {
    // vav.predicted_zone_temp_at_lower_min: 20.8, 13, 0.3, 0.25, 23.5 give 22.36.
    const found = minimumAirflowPrediction(input());
    if (found.status !== "ok") throw new Error(found.status);
    expect(found.thenC).toBeCloseTo(22.36, 2);
    expect(found).toMatchObject({ state: "deadband", nowC: 20.8, highC: 23.5 });
    // 13 + 7.8 * 0.3 / 0.29
    expect(found.lowC).toBeCloseTo(21.069, 3);
    expect(found.working.result).toMatchObject({ symbol: "T'", value: found.thenC });
    const value = new Map(found.working.terms.map((term) => [term.symbol, term.value]));
    const of = (symbol: string): number => value.get(symbol) ?? Number.NaN;
    const byHand = of("T_sat") + ((of("T_z") - of("T_sat")) * of("V_min")) / of("V_req");
    expect(Math.min(of("T_target"), byHand)).toBeCloseTo(found.working.result.value, 12);
  });

  it("takes the assumed supply air where none is trended, and says so", () => {
    const found = minimumAirflowPrediction(
      input({ airAtMinimum: { deadband: { ...air, supplyAirTempC: null }, reheat: null } }),
    );
    if (found.status !== "ok") throw new Error(found.status);
    expect(found.working.terms.find(({ symbol }) => symbol === "T_sat")).toMatchObject({
      value: 12,
      origin: "default",
    });
  });

  it("leaves the coil's heat out in reheat, and asks for the discharge air where it is not known", () => {
    const reheating = { ...air, zoneAirTempC: 20.1, dischargeAirTempC: 17.1 };
    const of = (reheat: typeof reheating | { dischargeAirTempC: null }) =>
      minimumAirflowPrediction(input({ airAtMinimum: { deadband: null, reheat: { ...reheating, ...reheat } } }));
    // 13 + (20.1 - 17.1) * 0.3 / 0.25 = 16.6, below what the heating setpoint holds.
    expect(of(reheating)).toMatchObject({ status: "ok", state: "reheat", thenC: 20.1 });
    expect(of({ dischargeAirTempC: null }).status).toBe("needs-discharge-air");
    const small = minimumAirflowPrediction(
      input({
        airAtMinimum: { deadband: null, reheat: { ...reheating, dischargeAirTempC: 14 } },
        requiredAirflowM3ps: { value: 0.2, origin: "computed" },
      }),
    );
    // 13 + 6.1 * 0.3 / 0.2 = 22.15
    expect(small).toMatchObject({ status: "ok" });
    if (small.status === "ok") expect(small.thenC).toBeCloseTo(22.15, 9);
  });

  it("says why where there is nothing to show", () => {
    const status = (changes: Partial<PredictionInput>) => minimumAirflowPrediction(input(changes)).status;
    expect(status({ airAtMinimum: { deadband: { ...air, hours: 4 }, reheat: null } })).toBe("no-hours-at-minimum");
    expect(status({ requiredAirflowM3ps: { value: 0.3, origin: "computed" } })).toBe("at-required-airflow");
    expect(status({ targetZoneAirTempC: { value: 20, origin: "entered" } })).toBe("not-overcooled");
  });

  it("is reached, or nearly, when the zone is simulated again with the lower minimum", () => {
    const { zones, calendar, outdoor } = simulated(demoSpan("2026-06-01", "2026-09-01"), ["1-09", "2-01", "3-10"]);
    for (const { plan, run, heaters } of zones) {
      const counts = (i: number): boolean =>
        calendar.occupied[i] === 1 && (calendar.minuteOfDay[i] as number) >= 9 * 60;
      const mean = (values: Float64Array, at: (i: number) => boolean): number => {
        const kept = values.filter((_, i) => at(i));
        return kept.reduce((sum, each) => sum + each, 0) / kept.length;
      };
      const { minimumAirflowM3ps, designAirflowM3ps } = plan.model;
      const atMinimum = (i: number) =>
        counts(i) &&
        (run.valveFraction[i] as number) === 0 &&
        (run.airflowM3ps[i] as number) <= 1.1 * minimumAirflowM3ps;
      const nowC = mean(run.airTempC, atMinimum);
      const found = minimumAirflowPrediction(
        input({
          airAtMinimum: {
            deadband: {
              ...air,
              zoneAirTempC: nowC,
              supplyAirTempC: mean(outdoor.supplyAirTempC, atMinimum),
            },
            reheat: null,
          },
          minimumAirflowM3ps: { value: minimumAirflowM3ps, origin: "entered" },
          requiredAirflowM3ps: { value: 0.12 * designAirflowM3ps, origin: "computed" },
          targetZoneAirTempC: { value: TARGET_C, origin: "entered" },
        }),
      );
      if (found.status !== "ok") throw new Error(found.status);
      const lower = { ...plan, model: { ...plan.model, minimumAirflowM3ps: 0.12 * designAirflowM3ps } };
      const again = simulatePlan(
        lower,
        heaters.map(({ device }) => device),
        calendar,
        outdoor,
      ).run;
      const thenC = mean(again.airTempC, atMinimum);
      // Above it the cooling setpoint of 23.9 °C and more takes over.
      expect(found.thenC, plan.code).toBe(TARGET_C);
      expect(thenC, plan.code).toBeGreaterThan(nowC + 0.7 * (found.thenC - nowC));
    }
  });
});
