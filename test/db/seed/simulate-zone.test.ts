import { expect, it } from "vitest";
import { demoSpan } from "@/db/seed/demo-calendar";
import { SUBSTEP_SECONDS } from "@/db/seed/simulate-zone";
import { simulated } from "./simulated-year";

const year = simulated(demoSpan("2025-10-01", "2026-10-01"));

const boxes = year.zones.filter(({ plan }) => plan.unit === "box");

it("accounts for all heat of the year in every zone", () => {
  for (const { plan, run } of year.zones) {
    const { gains, solar, heaters, envelope, partition, supply, stored } = run.heat;
    const residual = gains + solar + heaters + envelope + partition + supply - stored;
    expect(Math.abs(residual) / gains, plan.code).toBeLessThan(1e-9);
    if (plan.model.facade === null) expect(supply, `${plan.code} is cooled all year`).toBeLessThan(0);
  }
});

it("keeps occupied zone air between 15 and 32 °C", () => {
  const { occupied } = year.calendar;
  for (const { plan, run } of year.zones) {
    const air = run.airTempC.filter((_, i) => occupied[i] === 1);
    expect(Math.min(...air), plan.code).toBeGreaterThan(15);
    expect(Math.max(...air), plan.code).toBeLessThan(32);
  }
});

it("keeps airflow between minimum and design in occupied hours, and at nothing on working nights of summer", () => {
  const { calendar } = year;
  for (const { plan, run } of boxes) {
    const { minimumAirflowM3ps, designAirflowM3ps } = plan.model;
    const occupied = run.airflowM3ps.filter((_, i) => calendar.occupied[i] === 1);
    expect(Math.min(...occupied), plan.code).toBeGreaterThanOrEqual(minimumAirflowM3ps - 1e-12);
    expect(Math.max(...occupied), plan.code).toBeLessThanOrEqual(designAirflowM3ps + 1e-12);
    const julyNights = run.airflowM3ps.filter(
      (_, i) => calendar.month[i] === 7 && calendar.weekday[i] === 4 && calendar.minuteOfDay[i] === 120,
    );
    expect(Math.max(...julyNights), plan.code).toBe(0);
  }
});

it("never blows air above 35 °C nor, while the air handler runs, below its supply air", () => {
  const { calendar, outdoor } = year;
  for (const { plan, run } of boxes) {
    expect(Math.max(...run.dischargeAirTempC), plan.code).toBeLessThanOrEqual(35.0001);
    const above = run.dischargeAirTempC.map((air, i) =>
      calendar.occupied[i] === 1 ? air - (outdoor.supplyAirTempC[i] as number) : 1,
    );
    expect(Math.min(...above), plan.code).toBeGreaterThan(0.2);
  }
});

it("switches a packaged unit about its setpoint, mostly for less than ten minutes", () => {
  const { calendar, zones } = year;
  const unit = zones.find(({ plan }) => plan.unit === "packaged");
  if (!unit) throw new Error("there is no packaged unit");
  const { run } = unit;
  const july = (i: number) => calendar.month[i] === 7 && calendar.occupied[i] === 1;
  const off = run.airTempC
    .filter((_, i) => july(i))
    .map((air, k) => air - (run.coolingSetpointC.filter((_, i) => july(i))[k] as number));
  expect(Math.max(...off.map(Math.abs))).toBeLessThan(1.5);
  const runs = Array.from(run.coolingOn)
    .join("")
    .split("0")
    .filter((each) => each !== "");
  expect(runs.length).toBeGreaterThan(1000);
  expect(runs.filter((each) => each.length * SUBSTEP_SECONDS < 600).length / runs.length).toBeGreaterThan(0.5);
});

it("gives the same run for the same span, alone or with other zones", () => {
  const span = demoSpan("2026-07-06", "2026-07-20");
  const alone = simulated(span, ["3-10"]).zones[0];
  const among = simulated(span, ["3-09", "3-10", "3-11"]).zones[1];
  expect(alone?.plan.code).toBe("3-10");
  expect(alone?.run).toEqual(among?.run);
});

it("runs heaters more in zones with a fault than the year has cold mornings for in healthy ones", () => {
  const hoursPerHeater = (faulty: boolean) => {
    const hours = year.zones
      .filter(
        ({ plan }) => ["setpoint-too-low", "minimum-airflow-too-high", "biased-sensor"].includes(plan.cause) === faulty,
      )
      .flatMap(({ heaters }) => heaters.map(({ on }) => on.reduce((sum, each) => sum + each, 0) / 4));
    return { each: hours.reduce((sum, each) => sum + each, 0) / hours.length, most: Math.max(...hours) };
  };
  expect(hoursPerHeater(true).each).toBeGreaterThan(hoursPerHeater(false).each);
  expect(hoursPerHeater(true).most).toBeLessThan(2000);
});
