import { expect, test } from "vitest";
import { degreeHoursBelow, hoursBelow } from "@/lib/proposals/live/temperature-hours";

const TEMPS_C = [22, 22.5, 23, 23.5, 24, 24.5, 25];
/** 100 hours: 20 of them below 22 °C, by half a kelvin on the mean; 10 above 25 °C. */
const state = {
  hours: 100,
  hoursByBin: [100],
  zoneAirTempC: 23,
  hoursBelow: [20, 30, 50, 60, 70, 80, 90],
  lowTailK: 0.5,
};

test("hours below lie on straight lines between counts, and are none and all beyond the tails", () => {
  expect(hoursBelow(state, TEMPS_C, 22.25)).toBe(25);
  expect(hoursBelow(state, TEMPS_C, 20.9)).toBe(0);
  expect(hoursBelow(state, TEMPS_C, 21.5)).toBe(10);
  expect(hoursBelow(state, TEMPS_C, 27)).toBe(100);
});

/** By hand: tail 20 · 1 / 2 = 10; 22 to 22.5: 25 · 0.5 = 12.5; 22.5 to 23: 40 · 0.5 = 20. */
test("degree-hours are the area under them, tail and all", () => {
  expect(degreeHoursBelow(state, TEMPS_C, 22)).toBeCloseTo(10, 9);
  expect(degreeHoursBelow(state, TEMPS_C, 23)).toBeCloseTo(42.5, 9);
});

test("a rise is a lower temperature to be below", () => {
  expect(hoursBelow(state, TEMPS_C, 23, 0.5)).toBe(hoursBelow(state, TEMPS_C, 22.5));
  expect(degreeHoursBelow(state, TEMPS_C, 23.5, 0.5)).toBeCloseTo(42.5, 9);
});
