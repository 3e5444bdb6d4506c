import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { localDaysOver } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import { airTempBins } from "@/lib/trends/daily/air-temp-bins";
import { dayExposures } from "@/lib/trends/daily/day-exposures";
import { zoneExposure } from "@/lib/trends/exposure";
import { zoneStates } from "@/lib/trends/state";
import { OCCUPIED_STATES } from "@/lib/trends/zone-state";
import { MONDAY, makeZoneGrids } from "../../../support/zone-grids";

const LIMITS = { minimumAirflowM3ps: 0.1, designAirflowM3ps: 0.4 };

/** Three days of a zone with airflow and valve; `tempC` and `airflow` by interval. */
const zoneOf = (tempC: (i: number) => number, airflow: (i: number) => number = () => 0.3) =>
  makeZoneGrids(288, ({ i, hour }) => ({
    zoneAirTempC: tempC(i),
    occupied: hour >= 8 && hour < 18,
    airflowM3ps: airflow(i),
    reheatValvePct: i % 7 === 0 ? 40 : 0,
    outdoorAirTempC: i % 11 === 0 ? 5 : 28,
  }));

describe("exposure day by day", () => {
  it("counts the hours by state and the degree-hours of a day, by hand", () => {
    // Monday: 10 h at 22 °C, 1 K below 23 °C. Interval i = 35 (a multiple of 7) and so on reheat: 5 of 40, 10 more at 5 °C outdoors are no season.
    const grids = zoneOf(() => 22);
    const states = zoneStates(grids, LIMITS);
    const days = localDaysOver(zoneTable("UTC"), { fromUtcSeconds: MONDAY, toUtcSeconds: MONDAY + 3 * 86_400 });
    const made = dayExposures({ grids, states, counted: grids.occupied, days, targetZoneAirTempC: 23 });
    expect(made).toHaveLength(3);
    const reheat = [...Array(40).keys()].filter((k) => (k + 32) % 7 === 0).length / 4;
    expect(made[0]).toEqual({
      hours: { cooling: 10 - reheat, deadband: 0, reheat, fault: 0, undetermined: 0 },
      countedHours: 10,
      overcoolingKh: 10,
    });
  });

  it("adds up to the zone's exposure, and the bins to its hours, whatever the record", () => {
    const temps = fc.array(fc.oneof(fc.double({ min: 17, max: 28, noNaN: true }), fc.constant(Number.NaN)), {
      minLength: 288,
      maxLength: 288,
    });
    const flows = fc.array(fc.constantFrom(0.05, 0.11, 0.3, Number.NaN), { minLength: 288, maxLength: 288 });
    const zones = fc.constantFrom("UTC", "America/New_York", "Asia/Kolkata");
    fc.assert(
      fc.property(temps, flows, zones, (tempC, airflow, timeZone) => {
        const grids = zoneOf(
          (i) => tempC[i] as number,
          (i) => airflow[i] as number,
        );
        const states = zoneStates(grids, LIMITS);
        const target = { targetZoneAirTempC: 23, seasonThresholdC: 13 };
        const exposure = zoneExposure({ zoneId: 1, grids, states, ...target, occupiedSource: "schedule" });
        const days = localDaysOver(zoneTable(timeZone), {
          fromUtcSeconds: MONDAY,
          toUtcSeconds: MONDAY + 3 * 86_400,
        });
        const season = coolingSeasonMask(grids, 13);
        const made = dayExposures({ grids, states, counted: season, days, targetZoneAirTempC: 23 });
        for (const state of OCCUPIED_STATES)
          expect(made.reduce((sum, day) => sum + day.hours[state], 0)).toBeCloseTo(exposure.byState[state].hours, 9);
        const allKh = OCCUPIED_STATES.reduce((sum, state) => sum + exposure.byState[state].overcoolingKh, 0);
        expect(made.reduce((sum, day) => sum + day.overcoolingKh, 0)).toBeCloseTo(allKh, 9);
        const inBins = (mask: Uint8Array) =>
          airTempBins(grids, states, mask).reduce(
            (sum, bin) => sum + OCCUPIED_STATES.reduce((own, state) => own + bin.hours[state], 0),
            0,
          );
        expect(inBins(season)).toBeCloseTo(exposure.coolingSeasonHours, 9);
        expect(inBins(grids.occupied)).toBeCloseTo(exposure.occupiedHours, 9);
      }),
      { numRuns: 30 },
    );
  });

  it("puts hours into bins of 1 K without holes, the edge into the warmer one", () => {
    const grids = zoneOf((i) => (i % 96 < 40 ? 21.99 : i % 96 < 50 ? 22 : 24.5));
    const bins = airTempBins(grids, zoneStates(grids, LIMITS), grids.occupied);
    expect(bins.map((bin) => [bin.lowC, OCCUPIED_STATES.reduce((sum, state) => sum + bin.hours[state], 0)])).toEqual([
      [21, 6],
      [22, 7.5],
      [23, 0],
      [24, 16.5],
    ]);
    expect(airTempBins(grids, zoneStates(grids, LIMITS), new Uint8Array(288))).toEqual([]);
  });
});
