import { expect, test } from "vitest";
import { occupiedWeatherYear } from "@/lib/energy-model/occupied-weather-year";

const NINE_TO_FIVE = [{ startMinute: 540, endMinute: 1020 }];
const weekdays = { 1: NINE_TO_FIVE, 2: NINE_TO_FIVE, 3: NINE_TO_FIVE, 4: NINE_TO_FIVE, 5: NINE_TO_FIVE };
const newYork = { hours: { weekdays, holidays: [] }, timeZone: "America/New_York", utcOffsetHours: -5 };
const rowOf = (dayOfYear: number, hourEnding: number): number => (dayOfYear - 1) * 24 + hourEnding - 1;

test("a working day in standard time is occupied in the hours ending 10 to 17", () => {
  const { occupied } = occupiedWeatherYear({ ...newYork, calendarYear: 2026 });
  // 5 January 2026 is a Monday.
  expect(Array.from(occupied.slice(rowOf(5, 1), rowOf(6, 1)))).toEqual([
    ...new Array(9).fill(0),
    ...new Array(8).fill(1),
    ...new Array(7).fill(0),
  ]);
});

test("in daylight saving time the same wall-clock day lies an hour earlier in the file", () => {
  const { occupied } = occupiedWeatherYear({ ...newYork, calendarYear: 2026 });
  // 6 July 2026 is a Monday, day 187 of the year.
  expect(occupied[rowOf(187, 9)]).toBe(1);
  expect(occupied[rowOf(187, 16)]).toBe(1);
  expect(occupied[rowOf(187, 17)]).toBe(0);
});

test("counts the year's working hours: 261 weekdays of 2026 by eight hours", () => {
  const year = occupiedWeatherYear({ ...newYork, calendarYear: 2026 });
  expect(year.totalHours).toBe(261 * 8);
  expect(year.occupied.reduce((sum, each) => sum + each, 0)).toBe(261 * 8);
  expect(year.leapDayLeftOut).toBe(false);
});

test("holidays are not occupied and part hours count in part", () => {
  const hours = { weekdays: { 1: [{ startMinute: 465, endMinute: 500 }] }, holidays: ["2026-01-05"] };
  const { occupied } = occupiedWeatherYear({ ...newYork, hours, calendarYear: 2026 });
  expect(occupied[rowOf(5, 8)]).toBe(0);
  expect(occupied[rowOf(12, 8)]).toBeCloseTo(15 / 60, 12);
  expect(occupied[rowOf(12, 9)]).toBeCloseTo(20 / 60, 12);
});

test("a leap year is laid on the 365 days without its 29 February", () => {
  // 29 February 2028 is a Tuesday: 260 weekdays of the year less that one.
  const year = occupiedWeatherYear({ ...newYork, calendarYear: 2028 });
  expect(year.leapDayLeftOut).toBe(true);
  expect(year.totalHours).toBe(259 * 8);
  // 1 March 2028 is a Wednesday and stands on day 60 of the file.
  expect(year.occupied[rowOf(60, 12)]).toBe(1);
});

test("a zone half an hour off keeps its minutes, also across midnight", () => {
  const hours = { weekdays: { 1: [{ startMinute: 0, endMinute: 60 }] }, holidays: [] };
  const year = occupiedWeatherYear({ hours, timeZone: "Asia/Kolkata", utcOffsetHours: 5, calendarYear: 2026 });
  // Row of Sunday 4 January, hour ending 24 at UTC+5, is 23:30 to 00:30 on the wall clock.
  expect(year.occupied[rowOf(4, 24)]).toBeCloseTo(0.5, 12);
  expect(year.occupied[rowOf(5, 1)]).toBeCloseTo(0.5, 12);
});
