import { describe, expect, it } from "vitest";
import {
  type DayInterval,
  holidayDays,
  type OccupiedHours,
  occupiedMask,
  weeklyOccupiedHours,
} from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";

const newYork = zoneTable("America/New_York");
const STEP = 900;

const everyDay = (interval: DayInterval, holidays: string[] = []): OccupiedHours => ({
  weekdays: Object.fromEntries([1, 2, 3, 4, 5, 6, 7].map((weekday) => [weekday, [interval]])),
  holidays,
});

/** Occupied hours of a stretch from one local midnight (given in UTC) for a number of real hours. */
function occupied(hours: OccupiedHours, startUtc: number, realHours: number): number {
  const mask = occupiedMask(
    { startUtcSeconds: startUtc / 1000, stepSeconds: STEP, count: realHours * 4 },
    hours,
    newYork,
  );
  return mask.reduce((sum, each) => sum + each, 0) / 4;
}

// Local midnights in New York: clocks go forward on 8 March 2026 and back on 1 November 2026, both Sundays.
const SHORT_DAY = Date.UTC(2026, 2, 8, 5);
const LONG_DAY = Date.UTC(2026, 10, 1, 4);

describe("occupied mask", () => {
  it("covers a whole day of 23 hours, and one of 25", () => {
    const always = everyDay({ startMinute: 0, endMinute: 1440 });
    expect(occupied(always, SHORT_DAY, 23)).toBe(23);
    expect(occupied(always, LONG_DAY, 25)).toBe(25);
  });

  it("loses the missing hour and counts the repeated one twice", () => {
    const night = everyDay({ startMinute: 60, endMinute: 180 });
    expect(occupied(night, SHORT_DAY, 23)).toBe(1);
    expect(occupied(night, LONG_DAY, 25)).toBe(3);
  });

  it("keeps office hours at their wall-clock time on both days", () => {
    const office = everyDay({ startMinute: 8 * 60, endMinute: 18 * 60 });
    expect(occupied(office, SHORT_DAY, 23)).toBe(10);
    expect(occupied(office, LONG_DAY, 25)).toBe(10);
    const eightLocal = { startUtcSeconds: Date.UTC(2026, 2, 8, 12) / 1000, stepSeconds: STEP, count: 1 };
    expect([...occupiedMask(eightLocal, office, newYork)]).toEqual([1]);
    const sevenLocal = { ...eightLocal, startUtcSeconds: eightLocal.startUtcSeconds - STEP };
    expect([...occupiedMask(sevenLocal, office, newYork)]).toEqual([0]);
  });

  it("is empty on a holiday and on a weekday without hours", () => {
    const office = everyDay({ startMinute: 480, endMinute: 1080 }, ["2026-11-01"]);
    expect(occupied(office, LONG_DAY, 25)).toBe(0);
    const weekdaysOnly = { weekdays: { 1: [{ startMinute: 480, endMinute: 1080 }] }, holidays: [] };
    expect(occupied(weekdaysOnly, LONG_DAY, 25)).toBe(0);
    expect(occupied(weekdaysOnly, LONG_DAY + 25 * 3_600_000, 24)).toBe(10);
  });

  it("adds up two stretches of a day without counting an overlap twice", () => {
    const hours: OccupiedHours = {
      weekdays: {
        7: [
          { startMinute: 480, endMinute: 720 },
          { startMinute: 660, endMinute: 780 },
        ],
      },
      holidays: [],
    };
    expect(occupied(hours, SHORT_DAY, 23)).toBe(5);
  });
});

describe("occupied hours of a week", () => {
  it("are the sum over the weekdays", () => {
    expect(weeklyOccupiedHours(everyDay({ startMinute: 480, endMinute: 1080 }))).toBe(70);
    expect(weeklyOccupiedHours({ weekdays: {}, holidays: [] })).toBe(0);
  });
  it("leave out what is no date among the holidays", () => {
    expect(holidayDays(everyDay({ startMinute: 0, endMinute: 60 }, ["2026-12-25", "Christmas"])).size).toBe(1);
  });
});
