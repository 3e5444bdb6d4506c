import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { demoSpan, STEP_SECONDS } from "@/db/seed/demo-calendar";
import { type DemoCause, PLANTED_CAUSES } from "@/db/seed/planted-causes";
import { occupiedFigures, simulated } from "./simulated-year";

const summer = simulated(demoSpan("2026-05-15", "2026-09-16"));
const zonesWith = (cause: DemoCause) => summer.zones.filter(({ plan }) => plan.cause === cause);
const figuresOf = (cause: DemoCause) =>
  zonesWith(cause).map((zone) => ({ code: zone.plan.code, ...occupiedFigures(zone, summer) }));

describe("the plan", () => {
  it("names 36 zones on 3 floors, each once, a third of them healthy", () => {
    const codes = PLANTED_CAUSES.map(({ zoneCode }) => zoneCode);
    expect(new Set(codes).size).toBe(36);
    expect(new Set(codes.map((code) => code[0]))).toEqual(new Set(["1", "2", "3"]));
    expect(PLANTED_CAUSES.filter(({ cause }) => cause === "healthy").length).toBeGreaterThanOrEqual(12);
  });

  it("leaves out the trend that would tell in two zones for airflow and one for the reheat valve", () => {
    expect(PLANTED_CAUSES.filter(({ missingTrend }) => missingTrend === "airflow").length).toBe(2);
    const noValve = PLANTED_CAUSES.filter(({ missingTrend }) => missingTrend === "reheat-valve");
    expect(noValve.map(({ cause }) => cause)).toEqual(["reheat-fighting"]);
  });

  it("is read by nothing but the seed and tests", () => {
    const readers = ["app", "lib", "db"]
      .flatMap((folder) => filesOf(folder))
      .filter((file) => {
        return (
          !file.startsWith(path.join("db", "seed")) && /planted-causes|seed\/zone-plan/.test(readFileSync(file, "utf8"))
        );
      });
    expect(readers).toEqual([]);
  });
});

const filesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((file) => path.join(folder, file))
    .filter((file) => /\.tsx?$/.test(file));

describe("in the cooling season", () => {
  it("a healthy zone is held near a setpoint of 23.3-23.9 °C at modest airflow", () => {
    for (const zone of [...figuresOf("healthy"), ...figuresOf("cold-desk")]) {
      expect(zone.trueC, zone.code).toBeGreaterThan(23.2);
      expect(zone.trueC, zone.code).toBeLessThan(24.1);
      expect(zone.coolingShare, zone.code).toBeGreaterThan(0.75);
      expect(zone.reheatShare, zone.code).toBeLessThan(0.02);
    }
  });

  it("a zone with too low a setpoint is held at it, cooling, a kelvin and more below the target", () => {
    for (const zone of figuresOf("setpoint-too-low")) {
      expect(Math.abs(zone.aboveSetpointK), zone.code).toBeLessThan(0.3);
      expect(zone.trueC, zone.code).toBeLessThan(22.1);
      expect(zone.coolingShare, zone.code).toBeGreaterThan(0.9);
    }
  });

  it("a zone with too high a minimum airflow sinks below its setpoint at that minimum, valve shut", () => {
    for (const zone of figuresOf("minimum-airflow-too-high")) {
      expect(zone.aboveSetpointK, zone.code).toBeLessThan(-0.5);
      expect(zone.minimumShare, zone.code).toBeGreaterThan(0.65);
      expect(zone.reheatShare, zone.code).toBeLessThan(0.02);
    }
  });

  it("a zone whose reheat fights the minimum airflow burns heat in summer and stays below its setpoint", () => {
    for (const zone of figuresOf("reheat-fighting")) {
      expect(zone.aboveSetpointK, zone.code).toBeLessThan(-0.5);
      expect(zone.reheatShare, zone.code).toBeGreaterThan(0.3);
      expect(zone.reheatShare + zone.minimumShare, zone.code).toBeGreaterThan(0.85);
    }
  });

  it("a biased sensor shows the setpoint while the air is 1.8 K colder", () => {
    for (const zone of figuresOf("biased-sensor")) {
      expect(Math.abs(zone.aboveSetpointK), zone.code).toBeLessThan(0.3);
      expect(zone.trueC, zone.code).toBeLessThan(22.5);
      expect(zone.coolingShare, zone.code).toBeGreaterThan(0.9);
    }
  });

  it("a zone with too little airflow is at design airflow and above its setpoint in the afternoon", () => {
    const { calendar } = summer;
    for (const zone of zonesWith("too-little-airflow")) {
      const afternoon = occupiedFigures(zone, summer, (i) => (calendar.minuteOfDay[i] as number) >= 14 * 60);
      expect(afternoon.designShare, zone.plan.code).toBeGreaterThan(0.8);
      expect(afternoon.aboveSetpointK, zone.plan.code).toBeGreaterThan(1.5);
    }
  });

  it("an override lowers the setpoint by 2 K from its date on and takes the night setback away", () => {
    const year = simulated(demoSpan("2026-02-16", "2026-05-30"), ["2-06", "3-08"]);
    for (const { plan, run } of year.zones) {
      const { override, coolingSetpointC } = plan.programme;
      if (!override) throw new Error(`${plan.code} has no override`);
      const from = (override.fromUtcSeconds - year.calendar.span.startUtcSeconds) / STEP_SECONDS;
      expect(Math.max(...run.coolingSetpointC.slice(0, from)), plan.code).toBeGreaterThan(29);
      const after = run.coolingSetpointC.slice(from);
      expect(Math.min(...after), plan.code).toBeCloseTo(coolingSetpointC - 2, 9);
      expect(Math.max(...after), plan.code).toBeCloseTo(coolingSetpointC - 2, 9);
    }
    for (const zone of figuresOf("override-left-in")) expect(zone.trueC, zone.code).toBeLessThan(22.6);
  });

  it("a cold desk is 2 K and more colder than its sound zone, and alone in it", () => {
    for (const { plan, desks } of zonesWith("cold-desk")) {
      expect(desks.filter(({ offsetK }) => offsetK < -2).length, plan.code).toBe(1);
      expect(desks.filter(({ offsetK }) => offsetK < -1).length, plan.code).toBe(1);
    }
  });
});
