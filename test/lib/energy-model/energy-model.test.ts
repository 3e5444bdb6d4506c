import { expect, test } from "vitest";
import { AIR_HEAT_KJ_PER_M3K, airHeatAtPressure, sensibleHeatKw } from "@/lib/energy-model/air-heat";
import { balanceTempC, totalHeatLossKwPerK } from "@/lib/energy-model/balance-temperature";
import { fanPowerFraction } from "@/lib/energy-model/fan-power";
import { mechanicalFraction } from "@/lib/energy-model/mechanical-fraction";
import { outdoorHours } from "@/lib/energy-model/outdoor-hours";
import { compoundedSavingFraction, degreeHourFractionPerK } from "@/lib/energy-model/percent-per-kelvin";
import { seasonCoolingLoadKwh } from "@/lib/energy-model/season-load";
import { compareWithCase, loadCheckValues } from "../../support/check-values";
import { GREENSBORO_C, WORKED_HOURS } from "../overcooling/offices";

const EVERY_HOUR = new Float64Array(8760).fill(1);
const allHours = outdoorHours(GREENSBORO_C, EVERY_HOUR);

/** The days' means and means of extremes as a series of 365, each worth a day. */
const days = Array.from({ length: 365 }, (_, day) => GREENSBORO_C.slice(day * 24, day * 24 + 24));
const dailyMeans = outdoorHours(
  days.map((day) => day.reduce((sum, each) => sum + each, 0) / 24),
  new Array(365).fill(1),
);
const dailyMiddles = outdoorHours(
  days.map((day) => (Math.max(...day) + Math.min(...day)) / 2),
  new Array(365).fill(1),
);

test.each(
  loadCheckValues<{ UA_env_kW_K: number; V_oa_m3_s: number; q_gain_kW: number; T_set_C: number[] }>(
    "energy-model/balance-temperature",
  ).cases,
)("finds the outdoor temperature at which cooling begins: $name", (check) => {
  const i = check.inputs;
  const heatLossKwPerK = totalHeatLossKwPerK({ envelopeKwPerK: i.UA_env_kW_K, outdoorAirflowM3ps: i.V_oa_m3_s });
  compareWithCase(check, {
    UA_tot_kW_K: heatLossKwPerK,
    T_bal_C: i.T_set_C.map((setpointC) => balanceTempC({ setpointC, internalGainKw: i.q_gain_kW, heatLossKwPerK })),
  });
});

test.each(loadCheckValues<{ bases_C: number[] }>("energy-model/degree-days").cases)(
  "counts degree-days of a real year from hours, daily means and daily extremes: $name",
  (check) => {
    const bases = check.inputs.bases_C;
    compareWithCase(check, {
      mean_C: GREENSBORO_C.reduce((sum, each) => sum + each, 0) / 8760,
      CDD_dailymean: bases.map((base) => dailyMeans.degreeHours(base)),
      CDD_hourly: bases.map((base) => allHours.degreeHours(base) / 24),
      CDD_minmax: bases.map((base) => dailyMiddles.degreeHours(base)),
      days_above: bases.map((base) => dailyMeans.hoursAtOrAbove(base + 1e-9)),
      hours_above: bases.map((base) => allHours.hoursAtOrAbove(base + 1e-9)),
    });
  },
);

test.each(loadCheckValues<{ base_C: number; shift_K: number }>("energy-model/degree-day-derivative").cases)(
  "ties percent a kelvin to hours over degree-hours: $name",
  (check) => {
    const { base_C: base, shift_K: shift } = check.inputs;
    const [before, after] = [dailyMeans.degreeHours(base), dailyMeans.degreeHours(base + shift)];
    compareWithCase(check, {
      CDD0: before,
      CDD1: after,
      reduction_pct: 100 * (1 - after / before),
      first_order_pct_per_K: 100 * (degreeHourFractionPerK(dailyMeans, base) ?? Number.NaN),
    });
  },
);

test.each(loadCheckValues<{ V_m3_s: number; T_sat_C: number; T_dis_C: number }>("energy-model/reheat-power").cases)(
  "turns an airflow and a step into heat: $name",
  (check) => {
    const i = check.inputs;
    compareWithCase(check, { Q_kW: sensibleHeatKw({ airflowM3ps: i.V_m3_s, differenceK: i.T_dis_C - i.T_sat_C }) });
  },
);

type Identity = { UA_kW_K: number; q0_kW: number; q_heaters_kW: number; SP0: number; SP1: number };
test.each(loadCheckValues<Identity>("energy-model/sequential-identity").cases)(
  "splits heaters first and setpoint second so that the parts add up: $name",
  (check) => {
    const i = check.inputs;
    const hours = outdoorHours(GREENSBORO_C, WORKED_HOURS);
    const load = (setpointC: number, internalGainKw: number): number =>
      seasonCoolingLoadKwh(hours, {
        setpointC,
        internalGainKw,
        heatLossKwPerK: i.UA_kW_K,
        supplyAirTempC: 13,
        returnAirTempC: 22,
        hasEconomizer: false,
      });
    const [a, b, c] = [load(i.SP0, i.q0_kW + i.q_heaters_kW), load(i.SP0, i.q0_kW), load(i.SP1, i.q0_kW)];
    compareWithCase(check, {
      E_SP0_Qh: a,
      E_SP0_0: b,
      E_SP1_0: c,
      heater_part: a - b,
      setpoint_part: b - c,
      total: a - c,
    });
  },
);

test("running sums give the economizer's degree-hours as hour-by-hour addition does", () => {
  const hours = outdoorHours(GREENSBORO_C, WORKED_HOURS);
  for (const [baseC, supplyAirTempC, returnAirTempC] of [
    [10, 13, 22],
    [15.5, 12.3, 22.7],
    [25, 13, 22],
    [3, 14, 21.5],
    [60, 13, 22],
  ] as const) {
    let [weighted, share, season] = [0, 0, 0];
    GREENSBORO_C.forEach((outdoorAirTempC, i) => {
      const part = WORKED_HOURS[i] as number;
      const m = mechanicalFraction({ outdoorAirTempC, supplyAirTempC, returnAirTempC, hasEconomizer: true });
      weighted += part * m * Math.max(0, outdoorAirTempC - baseC);
      if (outdoorAirTempC < supplyAirTempC) return;
      share += part * m;
      season += part;
    });
    const air = { supplyAirTempC, returnAirTempC };
    expect(hours.mechanicalDegreeHours({ baseC, ...air })).toBeCloseTo(weighted, 6);
    expect(hours.meanMechanicalFraction(air)).toBeCloseTo(share / season, 10);
    expect(hours.hoursAtOrAbove(supplyAirTempC)).toBeCloseTo(season, 8);
  }
});

test("a year without an hour above the supply air has no mechanical cooling", () => {
  const cold = outdoorHours([-5, 0, 5], [1, 1, 1]);
  expect(cold.meanMechanicalFraction({ supplyAirTempC: 13, returnAirTempC: 22 })).toBe(0);
  expect(cold.mechanicalDegreeHours({ baseC: 10, supplyAirTempC: 13, returnAirTempC: 22 })).toBe(0);
  expect(degreeHourFractionPerK(cold, 10)).toBeNull();
});

test("refuses temperatures and weights of different lengths", () => {
  expect(() => outdoorHours([1, 2], [1])).toThrow(/occupied part/);
});

test("without an economizer the plant carries all of the load", () => {
  expect(mechanicalFraction({ outdoorAirTempC: 5, supplyAirTempC: 13, returnAirTempC: 22, hasEconomizer: false })).toBe(
    1,
  );
});

// 90.1 Appendix G curve by hand: 0.0013 + 0.147·0.5 + 0.9506·0.25 - 0.0998·0.125 = 0.299975
test("a fan at half its airflow draws three tenths of its power, and no less below its floor", () => {
  expect(fanPowerFraction(0.5)).toBeCloseTo(0.299975, 9);
  expect(fanPowerFraction(1)).toBeCloseTo(0.9991, 9);
  expect(fanPowerFraction(0.1)).toBe(fanPowerFraction(0.25));
  expect(fanPowerFraction(1.4)).toBe(fanPowerFraction(1));
});

// Hoyt, Arens & Zhang 2015: 29 % for 2.78 K is 11.6 % a kelvin compounded (0.71^(1/2.78)).
test("compounds percent a kelvin, and saves nothing when the setpoint does not rise", () => {
  expect(compoundedSavingFraction({ fractionPerK: 0.11592, riseK: 2.78 })).toBeCloseTo(0.29, 3);
  expect(compoundedSavingFraction({ fractionPerK: 0.1, riseK: -1 })).toBe(0);
});

// Standard atmosphere at 1500 m: 84.56 kPa (ISO 2533).
test("air at altitude carries less heat", () => {
  expect(airHeatAtPressure(101.325)).toBe(AIR_HEAT_KJ_PER_M3K);
  expect(airHeatAtPressure(84.56)).toBeCloseTo(1.0065, 3);
});
