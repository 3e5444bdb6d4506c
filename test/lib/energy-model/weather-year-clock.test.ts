import { expect, it } from "vitest";
import { weatherYearClock } from "@/lib/energy-model/weather-year-clock";

const newYork = { timeZone: "America/New_York", utcOffsetHours: -5 };
const hourOfYear = (day: number, hour: number): number => 24 * day + hour;

it("is the station's time in winter and an hour later in summer", () => {
  const { month, hour } = weatherYearClock({ ...newYork, calendarYear: 2026 });
  expect([month[0], hour[0]]).toEqual([1, 0]);
  // 1 July is the 182nd day; noon in standard time is one o'clock by the wall clock.
  expect([month[hourOfYear(181, 12)], hour[hourOfYear(181, 12)]]).toEqual([7, 13]);
  // The last hour of June in standard time is July's first by the wall clock.
  expect([month[hourOfYear(180, 23)], hour[hourOfYear(180, 23)]]).toEqual([7, 0]);
  expect([month[8759], hour[8759]]).toEqual([12, 23]);
});

it("leaves 29 February out", () => {
  const { month } = weatherYearClock({ ...newYork, calendarYear: 2028 });
  expect(month).toHaveLength(8760);
  expect(month[hourOfYear(58, 23)]).toBe(2);
  expect(month[hourOfYear(59, 0)]).toBe(3);
  expect(month[8759]).toBe(12);
});
