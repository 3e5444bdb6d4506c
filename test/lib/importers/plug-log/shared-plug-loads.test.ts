import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { reducePlugLog } from "@/lib/electrical/plug-log/reduce-plug-log";
import { readPlugLog } from "@/lib/importers/plug-log/read-plug-log";
import { OFFICE } from "@/test/lib/electrical/plug-log/plug-log-office";
import { hasSharedSet } from "@/test/support/shared-sets";

const FOLDER = new URL("../../../../../shared/data/plug-load/", import.meta.url);

/**
 * Rows, highest watts and kWh as printed in the README of the tracebase files (value held to the next row, steps over
 * 60 s left out): figures made by others, to four places.
 */
const FILES: readonly [file: string, rows: number, highestW: number, energyKwh: number][] = [
  ["australia__Desk_lamp__Desk_lamp_2013.05.08", 15_581, 0, 0],
  ["australia__Desk_lamp__Desk_lamp_2013.05.09", 82_487, 17, 0.0076],
  ["australia__Monitor_24in__Monitor_24inch_2013.05.08", 15_582, 23, 0.0091],
  ["australia__Monitor_24in__Monitor_24inch_2013.05.09", 82_525, 23, 0.1825],
  ["complete__Monitor-TFT__dev_599185_2012.01.08", 58_983, 45, 0.2383],
  ["complete__PC-Desktop__dev_11F01E_2011.11.23", 29_391, 113, 1.1662],
  ["complete__PC-Desktop__dev_11F01E_2011.11.24", 29_538, 111, 0.5224],
  ["complete__WaterKettle__Kettle_2011.11.23", 33_052, 1955, 0.1519],
  ["complete__WaterKettle__Kettle_2011.11.28", 34_678, 1964, 0.1551],
  ["incomplete__HairDryer__dev_B814DA_2011.12.11_cleaned_11.12.2011", 22_999, 1900, 0.2672],
  ["incomplete__HairDryer__dev_B814DA_2011.12.12_cleaned_12.12.2011", 20_886, 1928, 0.1252],
];

/** A reading of the last row for its usual step [kWh]: what the README's sums leave out, 113 W for 4 s at most. */
const LAST_ROW_KWH = 0.00013;

describe.skipIf(!hasSharedSet("plug-load"))("plug-level logs of the tracebase data set", () => {
  it.each(FILES)("%s", (file, rows, highestW, energyKwh) => {
    const bytes = gunzipSync(readFileSync(new URL(`${file}.csv.gz`, FOLDER)));
    const read = readPlugLog(
      { bytes },
      { zone: OFFICE.zone, voltageV: 230 },
      { unit: "w", dateOrder: "dmy", energy: null },
    );
    if (read.status !== "ok") throw new Error(read.message);
    const { accepted, repaired, rejected, ignored } = read.rows;
    expect(read.rows.inFile).toBe(rows);
    expect(accepted + repaired + rejected + ignored).toBe(rows);
    expect(rejected + ignored).toBe(0);
    const figures = reducePlugLog(read, { ...OFFICE, settings: [] });
    expect(Math.abs(figures.energyKwh - energyKwh)).toBeLessThan(0.00005 + LAST_ROW_KWH);
    expect(figures.highestPowerW).toBeLessThanOrEqual(highestW);
    if (highestW > 0) expect(figures.highestPowerW).toBeGreaterThan(0.9 * highestW);
  });

  it("asks for the unit and for the order of the dates, which these files do not say", () => {
    const bytes = gunzipSync(readFileSync(new URL("australia__Desk_lamp__Desk_lamp_2013.05.08.csv.gz", FOLDER)));
    const site = { zone: OFFICE.zone, voltageV: 230 };
    expect(readPlugLog({ bytes }, site, { unit: null, dateOrder: null, energy: null })).toMatchObject({
      question: "unit",
    });
    expect(readPlugLog({ bytes }, site, { unit: "w", dateOrder: null, energy: null })).toMatchObject({
      question: "date-order",
    });
  });

  it("keeps the energy of a day whose clock was set back, and says so", () => {
    const bytes = gunzipSync(
      readFileSync(new URL("australia__Monitor_24in__Monitor_24inch_2013.05.09.csv.gz", FOLDER)),
    );
    const read = readPlugLog(
      { bytes },
      { zone: OFFICE.zone, voltageV: 230 },
      { unit: "w", dateOrder: "dmy", energy: null },
    );
    if (read.status !== "ok") throw new Error(read.message);
    expect(read.findings).toContainEqual(
      expect.objectContaining({ code: "clock-set-back", evidence: expect.objectContaining({ backMinutes: 479 }) }),
    );
    for (let i = 1; i < read.tsUtcSeconds.length; i++)
      if (!((read.tsUtcSeconds[i] as number) > (read.tsUtcSeconds[i - 1] as number)))
        throw new Error(`row ${i} is not later`);
  });

  it("finds the one level of a kettle", () => {
    const bytes = gunzipSync(readFileSync(new URL("complete__WaterKettle__Kettle_2011.11.23.csv.gz", FOLDER)));
    const read = readPlugLog(
      { bytes },
      { zone: OFFICE.zone, voltageV: 230 },
      { unit: "w", dateOrder: "dmy", energy: null },
    );
    if (read.status !== "ok") throw new Error(read.message);
    const levels = reducePlugLog(read, { ...OFFICE, settings: [] }).states.filter((state) => state.hours > 0);
    expect(levels.at(-1)?.powerW).toBeGreaterThan(1700);
    expect(levels.length).toBeLessThanOrEqual(3);
  });
});
