import { describe, expect, it } from "vitest";
import { annualHoursByBin, annualise } from "@/lib/trends/annualise";
import { zoneExposure } from "@/lib/trends/exposure";
import { annualOccupiedBins, binLowC } from "@/lib/trends/outdoor-bins";
import { zoneStates } from "@/lib/trends/state";
import type { ZoneGrids } from "@/lib/trends/zone-grids";
import { OCCUPIED_STATES } from "@/lib/trends/zone-state";
import { makeZoneGrids } from "../../support/zone-grids";

const DAY = 96;

/**
 * Three weeks, occupied 08-18 h every day. Outdoor air 19 °C in the first ten days (zone 22 °C at minimum airflow), 25 °C in the
 * next ten (22.5 °C in cooling), 31 °C on the last (10 h only).
 */
function grids(days = 21, outdoor = true): ZoneGrids {
  return makeZoneGrids(days * DAY, ({ i, hour }) => {
    const day = Math.floor(i / DAY);
    return {
      occupied: hour >= 8 && hour < 18,
      zoneAirTempC: day < 10 ? 22 : day < 20 ? 22.5 : 20,
      coolingSetpointC: 22.5,
      airflowM3ps: day < 10 ? 0.1 : 0.3,
      reheatValvePct: 0,
      ...(outdoor ? { outdoorAirTempC: day < 10 ? 19 : day < 20 ? 25 : 31 } : {}),
    };
  });
}

const exposureOf = (each: ZoneGrids) =>
  zoneExposure({
    zoneId: 1,
    grids: each,
    states: zoneStates(each, { minimumAirflowM3ps: 0.1, designAirflowM3ps: 0.4 }),
    targetZoneAirTempC: 23,
    seasonThresholdC: 13,
    occupiedSource: "schedule",
  });

describe("annualise", () => {
  it("applies each bin's rate to the year's hours in it and the nearest for bins under 20 h", () => {
    const year = [
      { lowC: 12, hours: 100 },
      { lowC: 18, hours: 400 },
      { lowC: 24, hours: 600 },
      { lowC: 30, hours: 50 },
    ];
    const result = annualise(exposureOf(grids()), year);
    if (result.status !== "ok") throw new Error(result.status);
    // Hand: 1 K below in the 18-21 bin (deadband), 0.5 K in 24-27 (cooling); 12-15 takes 18-21; 30-33 has 10 h, takes 24-27.
    expect(result.annual.method).toBe("outdoor-bins");
    expect(result.annual.coolingSeasonHours).toBe(1150);
    expect(result.annual.byState.deadband.hours).toBeCloseTo(500, 9);
    expect(result.annual.byState.deadband.overcoolingKh).toBeCloseTo(500, 9);
    expect(result.annual.byState.cooling.hours).toBeCloseTo(650, 9);
    expect(result.annual.byState.cooling.overcoolingKh).toBeCloseTo(325, 9);
    expect(result.annual.extrapolatedFraction).toBeCloseTo(150 / 1150, 12);
  });

  it.each([true, false])("gives the same hours bin by bin, with an outdoor record: %s", (outdoor) => {
    const year = [
      { lowC: 12, hours: 100 },
      { lowC: 18, hours: 400 },
      { lowC: 30, hours: 50 },
    ];
    const exposure = exposureOf(grids(21, outdoor));
    const whole = annualise(exposure, year);
    if (whole.status !== "ok") throw new Error(whole.status);
    const bins = annualHoursByBin(exposure, year);
    for (const state of OCCUPIED_STATES)
      expect(bins.reduce((sum, bin) => sum + bin[state], 0)).toBeCloseTo(whole.annual.byState[state].hours, 9);
    expect(bins.map((bin) => OCCUPIED_STATES.reduce((sum, state) => sum + bin[state], 0))).toEqual([
      expect.closeTo(100, 9),
      expect.closeTo(400, 9),
      expect.closeTo(50, 9),
    ]);
  });

  it("keeps the hours of the year whatever the record", () => {
    const year = [{ lowC: 33, hours: 77 }];
    const result = annualise(exposureOf(grids()), year);
    if (result.status !== "ok") throw new Error(result.status);
    const total = Object.values(result.annual.byState).reduce((sum, each) => sum + each.hours, 0);
    expect(total).toBeCloseTo(77, 9);
    expect(result.findings.map((each) => each.code)).toEqual(["weather-not-covered"]);
  });

  it("uses the mean of the record without an outdoor trend, and says so", () => {
    const result = annualise(exposureOf(grids(21, false)), [{ lowC: 18, hours: 420 }]);
    if (result.status !== "ok") throw new Error(result.status);
    expect(result.annual.method).toBe("season-mean");
    // Hand: 210 h recorded, 100 h · 1 K in deadband; times two.
    expect(result.annual.byState.deadband).toEqual({ hours: 200, overcoolingKh: 200 });
    expect(result.findings.map((each) => each.code)).toEqual(["annual-by-season-mean"]);
  });

  it("refuses a year from less than fourteen days", () => {
    const exposure = exposureOf(grids(13));
    expect(exposure.findings.map((each) => each.code)).toContain("record-too-short");
    const result = annualise(exposure, [{ lowC: 18, hours: 400 }]);
    expect(result.status).toBe("not-enough-record");
    expect(result.findings[0]?.evidence).toEqual({ recordedDays: 13, neededDays: 14 });
    expect(annualise(exposureOf(grids(14)), [{ lowC: 18, hours: 400 }]).status).toBe("ok");
  });
});

describe("exposure", () => {
  it("leaves out hours below the season threshold and counts gaps", () => {
    const each = grids();
    each.outdoorAirTempC?.fill(12.9, 0, 5 * DAY);
    each.zoneAirTempC.fill(Number.NaN, 6 * DAY, 7 * DAY);
    each.outdoorAirTempC?.fill(Number.NaN, 7 * DAY, 8 * DAY);
    const exposure = exposureOf(each);
    expect(exposure.occupiedHours).toBe(200);
    expect(exposure.occupiedHoursWithoutData).toBe(10);
    expect(exposure.coolingSeasonHours).toBe(140);
    expect(exposure.byState.deadband.hours).toBe(30);
    expect(exposure.byState.deadband.meanZoneAirTempC).toBe(22);
    expect(exposure.findings.find((finding) => finding.code === "outdoor-gaps")?.evidence.leftOutHours).toBe(10);
    expect(exposure.hasTrend).toEqual({
      coolingSetpoint: true,
      heatingSetpoint: false,
      airflow: true,
      reheatValve: true,
      dischargeAir: false,
      damper: false,
      occupancy: false,
      coolingStage: false,
    });
  });

  it("names the points without which nothing can be told", () => {
    const exposure = exposureOf({ ...grids(), airflowM3ps: null });
    expect(exposure.byState.undetermined.hours).toBe(210);
    expect(exposure.findings.find((finding) => finding.code === "state-points-missing")?.evidence.points).toEqual([
      "airflow",
    ]);
  });
});

describe("annualOccupiedBins", () => {
  it("counts occupied hours at or above the threshold by 3 K bins, below zero too", () => {
    const bins = annualOccupiedBins(
      { outdoorAirTempC: [12.9, 13, 14.99, 15, 30, 30], occupied: [1, 1, 1, 0.5, 0, 1] },
      13,
    );
    expect(bins).toEqual([
      { lowC: 12, hours: 2 },
      { lowC: 15, hours: 0.5 },
      { lowC: 30, hours: 1 },
    ]);
    expect(binLowC(-0.1)).toBe(-3);
  });
});
