import { readFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { readWeatherFile } from "@/lib/importers/weather/read-weather-file";
import type { WeatherYear } from "@/lib/importers/weather/weather-file";

/**
 * Check values: the README of the weather data set (dry bulb of 8,760 hours; degree days base 18.3333 °C from means of
 * calendar days), printed to one decimal, the mean to four. Coordinates and clock: the first line of each file.
 * Chicago: NREL TMY3 in IBPSA project 1's BOPTEST. Denver: NREL ComStock. Greensboro: NREL TMY3 in pvlib-python.
 */
const FACTS = [
  {
    file: "USA_IL_Chicago-OHare.Intl.AP.725300_TMY3.epw.gz",
    format: "epw",
    station: "Chicago Ohare Intl Ap, IL, USA",
    place: [41.98, -87.92, -6],
    meanC: 9.988,
    minC: -22.8,
    maxC: 35.0,
    coolingDegreeDays: 468.0,
    heatingDegreeDays: 3514.0,
    findings: ["months-from-different-years"],
  },
  {
    file: "G0800310_2018.epw.gz",
    format: "epw",
    station: "Denver Internationa, CO, USA",
    place: [39.83, -104.66, -7],
    meanC: 11.0019,
    minC: -20.0,
    maxC: 38.9,
    coolingDegreeDays: 531.6,
    heatingDegreeDays: 3207.6,
    findings: ["daylight-saving-in-header"],
  },
  {
    file: "723170TYA.CSV.gz",
    format: "tmy3",
    station: "GREENSBORO PIEDMONT TRIAD INT, NC",
    place: [36.1, -79.95, -5],
    meanC: 14.4218,
    minC: -16.7,
    maxC: 35.6,
    coolingDegreeDays: 725.5,
    heatingDegreeDays: 2153.2,
    findings: ["months-from-different-years"],
  },
] as const;

describe.each(FACTS)("$file", (facts) => {
  const folder = path.join(process.cwd(), "..", "shared", "data", "weather");
  const read = readWeatherFile({
    fileName: facts.file.replace(".gz", ""),
    bytes: gunzipSync(readFileSync(path.join(folder, facts.file))),
  });

  it("is read whole, with its place and clock", () => {
    const year = accepted(read);
    expect(year.format).toBe(facts.format);
    expect(year.station).toBe(facts.station);
    expect([year.latitude, year.longitude, year.utcOffsetHours]).toEqual(facts.place);
    expect(year.dryBulbC).toHaveLength(8760);
    expect(year.findings.map((finding) => finding.code)).toEqual(facts.findings);
  });

  it("has the mean, extremes and degree days of the data set's description", () => {
    const { dryBulbC } = accepted(read);
    const mean = dryBulbC.reduce((sum, value) => sum + value, 0) / dryBulbC.length;
    expect(Math.abs(mean - facts.meanC)).toBeLessThan(0.00005);
    expect(Math.min(...dryBulbC)).toBe(facts.minC);
    expect(Math.max(...dryBulbC)).toBe(facts.maxC);
    const days = degreeDays(dryBulbC, 18.3333);
    expect(Math.abs(days.cooling - facts.coolingDegreeDays)).toBeLessThan(0.051);
    expect(Math.abs(days.heating - facts.heatingDegreeDays)).toBeLessThan(0.051);
  });
});

function accepted(read: ReturnType<typeof readWeatherFile>): WeatherYear {
  if (read.status !== "ok") throw new Error(read.message);
  return read;
}

function degreeDays(dryBulbC: Float64Array, baseC: number): { cooling: number; heating: number } {
  let cooling = 0;
  let heating = 0;
  for (let start = 0; start < dryBulbC.length; start += 24) {
    const mean = dryBulbC.subarray(start, start + 24).reduce((sum, value) => sum + value, 0) / 24;
    cooling += Math.max(0, mean - baseC);
    heating += Math.max(0, baseC - mean);
  }
  return { cooling, heating };
}
