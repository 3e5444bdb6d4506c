import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { reducePlugLog } from "@/lib/electrical/plug-log/reduce-plug-log";
import { readPlugLog } from "@/lib/importers/plug-log/read-plug-log";
import { NO_ANSWERS, OFFICE } from "./plug-log-office";

/**
 * A day at one second with its settings planted. Totals: heater-day.py beside the file, which adds them up in exact
 * fractions without any code of the project.
 */
const fixture = (name: string) => readFileSync(new URL(`../../../fixtures/plug-log/${name}`, import.meta.url));
const expected = JSON.parse(fixture("heater-day.json").toString()) as {
  rows: number;
  energyKwh: number;
  hours: Record<"off" | "fan" | "low" | "high", number>;
  levelKwh: Record<"off" | "fan" | "low" | "high", number>;
  longestRunHours: number;
};

const read = readPlugLog(
  { bytes: gunzipSync(fixture("heater-day.csv.gz")) },
  { zone: OFFICE.zone, voltageV: 120 },
  NO_ANSWERS,
);
const settings = [
  { name: "off", onRecordW: 0.5, basis: "class-default" },
  { name: "fan-only", onRecordW: 20, basis: "class-default" },
  { name: "low-heat", onRecordW: 735, basis: "plug-meter" },
  { name: "high-heat", onRecordW: 1500, basis: "nameplate" },
];

describe("a day of a fan heater at one second", () => {
  if (read.status !== "ok") throw new Error(read.message);
  const figures = reducePlugLog(read, { ...OFFICE, settings });
  const [off, fan, low, high] = figures.states;

  it("takes every row", () => {
    expect(read.rows).toEqual({ inFile: 86_401, accepted: expected.rows, repaired: 0, rejected: 0, ignored: 1 });
    expect(figures.loggedHours).toBeCloseTo(24, 6);
    expect(figures.gaps).toBe(0);
  });

  it("adds up the script's energy to 0.1 %", () => {
    expect(Math.abs(figures.energyKwh / expected.energyKwh - 1)).toBeLessThan(0.001);
  });

  it("finds the four planted levels and their hours", () => {
    expect(figures.states).toHaveLength(4);
    expect([off?.hours, fan?.hours, low?.hours, high?.hours]).toEqual(
      ["off", "fan", "low", "high"].map((name) => expect.closeTo(expected.hours[name as "off"], 3)),
    );
    expect([fan, low, high].map((state) => state?.energyKwh)).toEqual(
      ["fan", "low", "high"].map((name) => expect.closeTo(expected.levelKwh[name as "off"], 3)),
    );
  });

  it("takes each level for the setting of the register and says which watts are off", () => {
    expect(figures.states.map((state) => state.setting?.name)).toEqual(["off", "fan-only", "low-heat", "high-heat"]);
    expect(figures.findings.filter(({ code }) => code === "level-not-on-record")).toEqual([]);
  });

  it("counts the thermostat's pauses to the setting that pauses", () => {
    // 09:00-12:30 ends with the heat on; 13:15-17:00 ends within a pause of a minute, which nothing shows to be one.
    expect(high?.selectedHours).toBeCloseTo(3.5 + (3.75 - 1 / 60) + 3.5, 3);
    expect(high?.dutyFraction).toBeCloseTo(8.4 / (10.75 - 1 / 60), 3);
    expect(fan?.selectedHours).toBeCloseTo((10 + 1) / 60, 3);
    const selected = figures.states.reduce((sum, state) => sum + state.selectedHours, 0);
    expect(selected).toBeCloseTo(24, 6);
  });

  it("finds the run of three and a half hours and that it was after hours", () => {
    expect(figures.longestFullRun?.hours).toBeCloseTo(expected.longestRunHours, 3);
    expect(new Date(figures.longestFullRun?.fromMs ?? 0).toISOString()).toBe("2025-07-16T00:30:00.000Z");
    expect(figures.outsideOccupied.hours).toBeCloseTo(3.5, 3);
    expect(figures.findings.map(({ code }) => code)).toEqual([
      "runs-outside-occupied",
      "runs-three-hours",
      "short-log",
    ]);
  });

  it("keeps a profile of the day and no interval", () => {
    expect(figures.profile.occupiedW[20]).toBeGreaterThan(1400);
    expect(figures.profile.otherW).toEqual(Array.from({ length: 24 }, () => null));
    expect(JSON.stringify(figures).length).toBeLessThan(8000);
  });
});
