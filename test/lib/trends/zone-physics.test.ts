import { describe, expect, it } from "vitest";
import { predictedZoneTemp } from "@/lib/trends/predicted-zone-temp";
import { excessReheatKw, reheatHeatFlowKw } from "@/lib/trends/reheat-heat-flow";
import { ventilationMinimum } from "@/lib/trends/ventilation-minimum";
import vav from "../../check-values/trends/vav.json";

function check(name: string): {
  inputs: Record<string, unknown>;
  expected: Record<string, unknown>;
  tolerance: Record<string, number>;
} {
  const found = vav.checks.find((each) => each.name === name);
  if (!found) throw new Error(`no check ${name}`);
  return found as never;
}

describe("vav.predicted_zone_temp_at_lower_min", () => {
  const { inputs, expected, tolerance } = check("vav.predicted_zone_temp_at_lower_min");
  const cases = inputs.cases as number[][];

  it.each(cases.map((each, i) => ({ each, expectedC: (expected.Tz_new as number[])[i] as number })))(
    "$expectedC °C",
    ({ each, expectedC }) => {
      const [zoneAirTempC, supplyAirTempC, minimumAirflowM3ps, requiredAirflowM3ps, targetZoneAirTempC] = each as [
        number,
        number,
        number,
        number,
        number,
      ];
      const result = predictedZoneTemp({
        zoneAirTempC,
        supplyAirTempC,
        minimumAirflowM3ps,
        requiredAirflowM3ps,
        targetZoneAirTempC,
      });
      if (result.status !== "ok") throw new Error(result.status);
      expect(Math.abs(result.zoneAirTempC - expectedC)).toBeLessThanOrEqual(tolerance.abs as number);
    },
  );

  it("says so where there is nothing to predict", () => {
    const now = {
      zoneAirTempC: 20.8,
      supplyAirTempC: 13,
      minimumAirflowM3ps: 0.3,
      requiredAirflowM3ps: 0.12,
      targetZoneAirTempC: 23.5,
    };
    expect(predictedZoneTemp({ ...now, zoneAirTempC: 23.6 }).status).toBe("not-overcooled");
    expect(predictedZoneTemp({ ...now, requiredAirflowM3ps: 0.3 }).status).toBe("at-required-airflow");
    expect(predictedZoneTemp({ ...now, supplyAirTempC: 21 }).status).toBe("outside-limits");
    expect(predictedZoneTemp({ ...now, requiredAirflowM3ps: 0 }).status).toBe("outside-limits");
  });
});

describe("vav.ventilation_minimum", () => {
  const { inputs, expected, tolerance } = check("vav.ventilation_minimum");
  const zone = {
    people: inputs.P as number,
    floorAreaM2: inputs.A_m2 as number,
    ratePerPersonM3ps: 0.0025,
    ratePerAreaM3psPerM2: 0.0003,
    distributionEffectiveness: inputs.Ez as number,
    designAirflowM3ps: (inputs.V_max_L_s as number) / 1000,
    controllableFraction: 0.075,
  };

  it("gives the outdoor airflow of the zone and its part of design", () => {
    const result = ventilationMinimum(zone);
    if (result.status !== "ok") throw new Error(result.status);
    const wanted = (expected.Voz_L_s as number) / 1000;
    expect(Math.abs(result.ventilationM3ps - wanted)).toBeLessThanOrEqual(wanted * (tolerance.rel as number));
    const fraction = expected.fraction as number;
    expect(Math.abs((result.ventilationFractionOfDesign ?? 0) - fraction)).toBeLessThanOrEqual(
      fraction * (tolerance.rel as number),
    );
    expect(result.requiredM3ps).toBe(result.ventilationM3ps);
  });

  it("is never below what the box can hold", () => {
    const result = ventilationMinimum({ ...zone, people: 0, controllableFraction: 0.1 });
    expect(result).toMatchObject({ status: "ok", requiredM3ps: 0.048 });
  });

  it("refuses a zone without area", () => {
    expect(ventilationMinimum({ ...zone, floorAreaM2: 0 }).status).toBe("outside-limits");
  });
});

describe("vav.reheat_power", () => {
  const { inputs, expected, tolerance } = check("vav.reheat_power");

  it("gives the heat of the coil", () => {
    const heatKw = reheatHeatFlowKw({
      airflowM3ps: inputs.V_m3_s as number,
      dischargeAirTempC: inputs.T_dis_C as number,
      supplyAirTempC: inputs.T_sat_C as number,
      airHeatKjPerM3K: 1.206,
      ductGainK: 0,
    });
    const wanted = expected.Q_kW as number;
    expect(Math.abs(heatKw - wanted)).toBeLessThanOrEqual(wanted * 1e-4);
    const fromImperial = expected.Q_kW_from_IP as number;
    expect(Math.abs(heatKw - fromImperial)).toBeLessThanOrEqual(fromImperial * (tolerance.rel as number));
  });

  it("takes the duct gain off and never goes below nothing", () => {
    const now = { airflowM3ps: 1, dischargeAirTempC: 14, supplyAirTempC: 13, airHeatKjPerM3K: 1.2, ductGainK: 0.5 };
    expect(reheatHeatFlowKw(now)).toBeCloseTo(0.6, 12);
    expect(reheatHeatFlowKw({ ...now, dischargeAirTempC: 13.2 })).toBe(0);
  });

  it("buys heat and cooling for the airflow above the required one", () => {
    // Hand: 1.206 * 3.6 = 4.3416; * (20.8 - 13) = 33.86448; * (22 - 13) * 0.7987 = 31.2087...
    const bought = excessReheatKw({
      minimumAirflowM3ps: 6,
      requiredAirflowM3ps: 2.4,
      heatingSetpointC: 20.8,
      returnAirTempC: 22,
      supplyAirTempC: 13,
      mechanicalFraction: 0.7987,
      airHeatKjPerM3K: 1.206,
    });
    expect(bought.heatKw).toBeCloseTo(33.86448, 5);
    expect(bought.coolingKw).toBeCloseTo(4.3416 * 9 * 0.7987, 9);
  });
});
