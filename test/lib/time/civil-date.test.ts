import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import {
  civilFromDayNumber,
  dayNumber,
  dayNumberFromLocalDate,
  isoWeekday,
  localDateFromDayNumber,
} from "@/lib/time/civil-date";

const days = fc.integer({ min: -719_162, max: 2_932_896 });
const EPOCH = Temporal.PlainDate.from("1970-01-01");

describe("calendar dates", () => {
  it("agree with Temporal from year 1 to 9999", () => {
    fc.assert(
      fc.property(days, (day) => {
        const date = EPOCH.add({ days: day });
        expect(civilFromDayNumber(day)).toEqual({ year: date.year, month: date.month, day: date.day });
        expect(localDateFromDayNumber(day)).toBe(date.toString());
        expect(isoWeekday(day)).toBe(date.dayOfWeek);
      }),
      { numRuns: 500 },
    );
  });

  it("come back from their day number", () => {
    fc.assert(
      fc.property(days, (day) => {
        const { year, month, day: dayOfMonth } = civilFromDayNumber(day);
        expect(dayNumber(year, month, dayOfMonth)).toBe(day);
        expect(dayNumberFromLocalDate(localDateFromDayNumber(day))).toBe(day);
      }),
    );
  });

  it.each([
    ["1970-01-01", 0, 4],
    ["2000-02-29", 11016, 2],
    ["2026-11-25", 20782, 3],
  ])("%s is day %s and weekday %s", (date, day, weekday) => {
    expect(dayNumberFromLocalDate(date)).toBe(day);
    expect(isoWeekday(day)).toBe(weekday);
  });

  it.each(["2026-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "2026-4-3", "20260403", "", "today"])(
    "%o is no date of the calendar",
    (text) => expect(dayNumberFromLocalDate(text)).toBeNull(),
  );
});
