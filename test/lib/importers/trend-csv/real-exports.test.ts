import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { convertToStored } from "@/lib/importers/trend-csv/convert-to-stored";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import type { TrendAnswers, TrendPoint, TrendReading } from "@/lib/importers/trend-csv/trend-file";

// Counts and means: the README files of the two data sets (read from the files there, not with this importer).
const DATA = fileURLToPath(new URL("../../../../../shared/data/", import.meta.url));
test("the real exports are where these tests read them", () => expect(existsSync(DATA)).toBe(true));

async function read(path: string, timeZone: string, answers?: TrendAnswers): Promise<TrendReading> {
  const raw = readFileSync(DATA + path);
  const bytes = new Uint8Array(path.endsWith(".gz") ? gunzipSync(raw) : raw);
  const fileName = (path.split("/").at(-1) ?? path).replace(/\.gz$/, "");
  const reading = await readTrendFile({ fileName, bytes, timeZone, answers });
  const { rows } = reading;
  expect(rows.accepted + rows.repaired + rows.heldBack + rows.rejected + rows.ignored).toBe(rows.rowsInFile);
  return reading;
}
const point = (reading: TrendReading, name?: string): TrendPoint => {
  const found = name ? reading.points.find((other) => other.name === name) : reading.points[0];
  if (!found) throw new Error(`no point ${name}`);
  return found;
};
const vav = (file: string): Promise<TrendReading> => read(`bas-point-exports/${file}.csv`, "America/Chicago");
const utc = (text: string): number => Date.parse(text) / 1000;

describe("one file a point", () => {
  const zones = [
    { zone: "VAV-1_ZN-T", occupancy: "VAV-1_OCC-O", occupiedMeanF: 73.819 },
    { zone: "VAV-2_ZN-T", occupancy: "VAV-2_OCC-C", occupiedMeanF: 72.909 },
    { zone: "VAV-5_ZN-T", occupancy: "VAV-5-OCC-O", occupiedMeanF: 72.825 },
    { zone: "VAV-10_ZN-T", occupancy: "VAV-10-0CC-O", occupiedMeanF: 74.039 },
  ];
  for (const { zone, occupancy, occupiedMeanF } of zones) {
    test(`${zone}: 8,640 rows, 3,144 of them occupied with a mean of ${occupiedMeanF} °F`, async () => {
      const temp = point(await vav(zone));
      expect(temp).toMatchObject({
        name: zone,
        kind: "numeric",
        unit: "degF",
        unitAsWritten: "°F",
        sampling: "interval",
      });
      expect(temp.tsUtcSeconds.length).toBe(8640);
      const occ = point(await vav(occupancy));
      expect(occ).toMatchObject({ kind: "state", stateNames: ["Occ", "Unocc"], sampling: "change-of-value" });
      let count = 0;
      let sum = 0;
      let at = -1;
      temp.tsUtcSeconds.forEach((ts, i) => {
        while (at + 1 < occ.tsUtcSeconds.length && (occ.tsUtcSeconds[at + 1] as number) <= ts) at++;
        if (occ.values[at] !== 0) return;
        count++;
        sum += temp.values[i] as number;
      });
      expect(count).toBe(3144);
      expect(sum / count).toBeCloseTo(occupiedMeanF, 3);
    });
  }

  test("reads zone words and the form re-saved by a spreadsheet as the same clock", async () => {
    const words = await vav("S-7_ZN-T");
    expect(words.detected).toMatchObject({ stampZone: "in each stamp", stepSeconds: 300 });
    expect(point(words).tsUtcSeconds[0]).toBe(utc("2022-05-07T12:15:00-05:00"));
    const resaved = await vav("VAV-10_DPR-O");
    expect(resaved.detected).toMatchObject({ dateOrder: "mdy", stepSeconds: 300, stampZone: "America/Chicago" });
    expect(point(resaved).tsUtcSeconds[0]).toBe(utc("2022-05-07T13:15:00-05:00"));
  });

  test("reads CST and CDT in one file", async () => {
    const occ = point(await vav("VAV-1_OCC-O"));
    expect(occ.tsUtcSeconds[0]).toBe(utc("2022-03-02T11:31:48-06:00"));
    expect(occ.tsUtcSeconds.at(-1)).toBe(utc("2022-06-06T07:00:15-05:00"));
  });

  test("counts a change-of-value row that is there twice once", async () => {
    const { findings, rows } = await vav("VAV-1_OCC-O");
    expect(rows).toMatchObject({ rowsInFile: 194, accepted: 193, ignored: 1 });
    expect(findings).toContainEqual(expect.objectContaining({ code: "duplicate-identical", count: 1, lines: [3] }));
  });

  test("takes -250 for a sensor that is not there, with blanks before it", async () => {
    const reading = await vav("VAV-1_DA-T");
    expect(reading.outcome).toBe("refuse");
    expect(reading.refusal).toMatchObject({ code: "no-readings" });
    expect(reading.findings).toContainEqual(
      expect.objectContaining({ code: "sentinel-value", count: 4320, evidence: "-250" }),
    );
    expect(reading.rows).toMatchObject({ rowsInFile: 4320, rejected: 4320 });
    expect(point(await vav("VAV-5-DA-T")).tsUtcSeconds.length).toBe(4320);
  });

  test("refuses the file that has a heading and no rows", async () => {
    const { refusal } = await vav("S-7_FBD-SP");
    expect(refusal?.code).toBe("no-readings");
    expect(refusal?.sentence).toContain("1 point found, no readings");
  });

  test("holds setpoints to their own two days", async () => {
    const reading = await vav("VAV-1_ACTCLGSP");
    expect(reading.detected).toMatchObject({ dateOrder: "mdy", sampling: "change-of-value" });
    const setpoint = point(reading);
    expect(setpoint.tsUtcSeconds.length).toBe(500);
    expect((setpoint.tsUtcSeconds[499] as number) - (setpoint.tsUtcSeconds[0] as number)).toBeLessThan(2 * 86400);
  });

  test("keeps damper values outside 0..100 out of the store and says so, without clamping", async () => {
    const reading = await vav("VAV-1_DPR-O");
    expect(reading.outcome).toBe("accept");
    const stored = convertToStored(point(reading), "damper-position");
    if (stored.status !== "ok") throw new Error(stored.sentence);
    expect(stored.implausible).toBeGreaterThan(0);
    expect(stored.implausible).toBeLessThanOrEqual(427);
    expect(stored.ts.length + stored.implausible).toBe(8640);
    expect(Math.max(...stored.v)).toBeLessThanOrEqual(1050);
    expect(stored.findings[0]).toMatchObject({ code: "implausible-value", count: stored.implausible });
  });
});

describe("wide exports", () => {
  test("RTU11: 2,024 hourly rows of ten points; the hour that clocks skip is no gap", async () => {
    const reading = await read("bas-point-exports/RTU11.csv", "America/New_York");
    expect(reading.outcome).toBe("accept");
    expect(reading.rows).toMatchObject({ rowsInFile: 2024, accepted: 2024 });
    expect(reading.points.map(({ name }) => name)).toContain("RTU_11_AVGZN_T");
    expect(reading.points.length).toBe(10);
    expect(reading.findings.map(({ code }) => code)).not.toContain("gap");
    const zone = point(reading, "RTU_11_AVGZN_T");
    expect(zone.tsUtcSeconds[0]).toBe(utc("2026-01-01T00:00:00-05:00"));
    expect(zone.tsUtcSeconds.at(-1)).toBe(utc("2026-03-26T08:00:00-04:00"));
    // Filled on change only: 50 times Off and 56 times On among 2,024 rows.
    const fan = point(reading, "RTU_11_SF_S");
    expect(fan).toMatchObject({ kind: "state", stateNames: ["Off", "On"], sampling: "change-of-value", unit: null });
    expect([fan.values.filter((v) => v === 0).length, fan.values.filter((v) => v === 1).length]).toEqual([50, 56]);
    expect(point(reading, "RTU_11_DA1_P")).toMatchObject({ unitAsWritten: "in/wc", unit: null });
  });

  test("UserGuide_setpoint: leaves index columns out, asks for units, keeps the midnight written without a time", async () => {
    const file = "bas-wide-exports/UserGuide_setpoint.csv";
    const reading = await read(file, "America/Phoenix");
    expect(reading.outcome).toBe("ask");
    expect(reading.ask[0]).toMatchObject({ what: "unit", proposal: "degF", choices: ["degF", "degC", "other"] });
    expect(reading.points.map(({ name }) => name)).not.toContain("Timedata");
    expect(reading.points.map(({ name }) => name)).not.toContain("Unnamed: 0");
    const answered = await read(file, "America/Phoenix", {
      unit: "degF",
      units: { HeatCmd1: "percent", HeatCmd2: "percent" },
    });
    expect(answered.ask).toEqual([]);
    const space = point(answered, "SpaceTemp");
    expect(space.tsUtcSeconds.length).toBe(1440);
    // The file's own column of Unix seconds: 1468396800 is 1:00 local.
    expect(space.tsUtcSeconds[0]).toBe(1468396800);
    expect(space.tsUtcSeconds[1439]).toBe(1468483140);
    expect(Math.min(...space.values)).toBe(71.05);
    expect(Math.max(...space.values)).toBe(73.23);
    expect(space.values.reduce((sum, value) => sum + value, 0) / 1440).toBeCloseTo(71.668, 3);
    // Zeros that stand for "no reading" are no setpoints: 89 rows.
    const stored = convertToStored(point(answered, "ActClgStpt"), "cooling-setpoint");
    expect(stored).toMatchObject({ status: "ok", implausible: 89 });
  });

  test("UserGuide_AHU: 25,861 one-minute rows with gaps, no stamp in the repeated hour", async () => {
    const reading = await read("bas-wide-exports/UserGuide_AHU.csv.gz", "America/Los_Angeles");
    expect(reading.rows).toMatchObject({ rowsInFile: 25861, accepted: 25861 });
    expect(reading.detected).toMatchObject({ dateOrder: "mdy", stepSeconds: 60, sampling: "interval" });
    expect(reading.findings.map(({ code }) => code)).toContain("gap");
    expect(reading.findings.map(({ code }) => code)).not.toContain("ambiguous-local-time");
  });

  test("UserGuide_Signal and UserGuide_Temperature: 12-hour clock, two-digit year, blanks", async () => {
    const signal = await read("bas-wide-exports/UserGuide_Signal_Dataset.csv", "America/Los_Angeles");
    expect(signal.rows.rowsInFile).toBe(181);
    expect(point(signal).tsUtcSeconds[0]).toBe(utc("2014-07-22T14:00:00-07:00"));
    const temperature = await read("bas-wide-exports/UserGuide_Temperature_Dataset.csv", "America/Los_Angeles");
    const gaps = temperature.findings.filter(({ code }) => code === "gap");
    expect(gaps.map(({ missing }) => (missing ?? 0) + 1)).toEqual([52, 22]);
  });
});

// Least and largest zone temperatures in °C: the README of the simulated office, there read without this importer.
describe("a simulation that counts seconds", () => {
  const RESULTS = [
    { file: "results_initialize_advance.csv.gz", low: 17.797, high: 20.817, zones: 5 },
    { file: "results_set_scenario.csv.gz", low: 17.542, high: 22.212, zones: 5 },
    { file: "results_peak_cool_day.csv", low: 19.001, high: 26.348, zones: 3 },
  ];
  for (const { file, low, high, zones } of RESULTS) {
    test(`${file}: zone temperatures from ${low} to ${high} °C, kelvin by their values`, async () => {
      const asked = await read(`sim-office-5zone/${file}`, "America/Chicago");
      expect(asked.outcome).toBe("ask");
      const unitAsk = asked.ask.find(
        ({ what, points }) => what === "unit" && points?.includes("hvac_reaZonCor_TZon_y"),
      );
      expect(unitAsk).toMatchObject({ choices: ["degF", "degC", "kelvin", "other"], proposal: "kelvin" });
      expect(asked.ask.map(({ what }) => what)).toContain("time-start");
      const units = Object.fromEntries((unitAsk?.points ?? []).map((name) => [name, "kelvin"]));
      const timeStart = "2026-01-01T00:00";
      const reading = await read(`sim-office-5zone/${file}`, "America/Chicago", { timeStart, units });
      const temps = reading.points.filter(({ name }) => /^hvac_reaZon\w+_TZon_y$/.test(name));
      expect(temps).toHaveLength(zones);
      const stored = temps.map((temp) => convertToStored(temp, "zone-air-temp"));
      const values = stored.flatMap((each) =>
        each.status === "ok" ? [...each.v].map((v) => v / 10 ** each.decimals) : [],
      );
      expect(values).toHaveLength(500 * zones);
      expect(Math.min(...values)).toBeCloseTo(low, 2);
      expect(Math.max(...values)).toBeCloseTo(high, 2);
    });
  }

  test("counts on without daylight saving from the start that is given", async () => {
    const file = "sim-office-5zone/results_peak_cool_day.csv";
    const { points } = await read(file, "America/Chicago", { timeStart: "2026-01-01T00:00" });
    // 15,984,000 s after midnight of 1 January, Central Standard Time: 5 July, 00:00 of that time.
    expect(points[0]?.tsUtcSeconds[0]).toBe(utc("2026-07-05T00:00:00-06:00"));
  });
});
