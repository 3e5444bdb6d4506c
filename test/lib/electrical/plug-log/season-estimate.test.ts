import { describe, expect, it } from "vitest";
import type { PlugDay } from "@/lib/electrical/plug-log/plug-log-figures";
import { seasonWorking } from "@/lib/electrical/plug-log/plug-log-working";
import { seasonEstimate } from "@/lib/electrical/plug-log/season-estimate";
import { dayNumberFromLocalDate, isoWeekday, localDateFromDayNumber } from "@/lib/time/civil-date";
import { loadCheckValues } from "@/test/support/check-values";
import { OFFICE } from "./plug-log-office";

const first = dayNumberFromLocalDate("2025-06-02") as number;

/** Days from Monday 2 June 2025 on with these energies, on workdays only or on every day. */
function logged(kwh: readonly number[], { everyDay = false, loggedHours = 24 } = {}): PlugDay[] {
  const days: PlugDay[] = [];
  for (let day = first; days.length < kwh.length; day++) {
    const isOccupied = isoWeekday(day) <= 5;
    if (!isOccupied && !everyDay) continue;
    days.push({
      date: localDateFromDayNumber(day),
      energyKwh: kwh[days.length] as number,
      loggedHours,
      dayHours: 24,
      isOccupied,
    });
  }
  return days;
}

type LoggerInputs = { kWh_per_day: number[]; conf: number; N_days_in_stratum: number };
const published = loadCheckValues<LoggerInputs>("electrical/logger-days").cases[0];

describe("a season from the days of a log", () => {
  it("is the stratified estimate with the published interval, for a season of workdays only", () => {
    if (!published) throw new Error("no case");
    // plug.logger_t_interval of the reference, cross-checked there with R 4.2.2: 85 days, 155.042 to 242.758 kWh.
    const kwh = [3.1, 0.4, 2.2, 4.6, 0, 1.9, 3.7, 2.8, 0.9, 5.2, 2.4, 0, 3.3, 1.2, 2.9, 4.1, 0.6, 2, 3.8, 1.7];
    const hours = { weekdays: OFFICE.occupiedHours.weekdays, holidays: [] };
    const estimate = seasonEstimate(logged(kwh), { from: "2025-06-02", to: "2025-09-26" }, hours);
    if (estimate.status !== "ok") throw new Error(estimate.message);
    expect(estimate.strata[0]).toMatchObject({ name: "occupied days", days: 85, loggedDays: 20 });
    expect(estimate.method).toBe("student-t");
    expect(estimate.energyKwh.value).toBeCloseTo(198.9, 6);
    expect(estimate.energyKwh.low).toBeCloseTo(155.042, 2);
    expect(estimate.energyKwh.high).toBeCloseTo(242.758, 2);
    expect(estimate.leftOut).toEqual([{ name: "other days", days: 32, loggedDays: 0 }]);
  });

  it("refuses fewer than five whole days, and says why", () => {
    const few = seasonEstimate(logged([1, 2, 3, 4]), { from: "2025-06-01", to: "2025-08-31" }, OFFICE.occupiedHours);
    expect(few).toMatchObject({ status: "refused", code: "short-log" });
    const halves = logged([1, 2, 3, 4, 5, 6], { loggedHours: 12 });
    expect(seasonEstimate(halves, { from: "2025-06-01", to: "2025-08-31" }, OFFICE.occupiedHours)).toMatchObject({
      code: "short-log",
    });
  });

  it("does not count days outside the season that they are to stand for", () => {
    const winter = seasonEstimate(
      logged([1, 2, 3, 4, 5, 6]),
      { from: "2025-12-01", to: "2026-02-28" },
      OFFICE.occupiedHours,
    );
    expect(winter).toMatchObject({ status: "refused", code: "short-log" });
  });

  it("refuses to let a summer stand for a year", () => {
    const year = seasonEstimate(
      logged([1, 2, 3, 4, 5, 6]),
      { from: "2025-01-01", to: "2025-12-31" },
      OFFICE.occupiedHours,
    );
    expect(year).toMatchObject({ status: "refused", code: "period-too-long" });
  });

  it("resamples days when they are few, and counts weekends by themselves", () => {
    const kwh = Array.from({ length: 35 }, (_, at) => (at % 7 < 5 ? 2 + (at % 3) : 0.1));
    const estimate = seasonEstimate(
      logged(kwh, { everyDay: true }),
      { from: "2025-06-01", to: "2025-08-31" },
      OFFICE.occupiedHours,
    );
    if (estimate.status !== "ok") throw new Error(estimate.message);
    expect(estimate.method).toBe("bootstrap-by-day");
    expect(estimate.strata.map(({ days, loggedDays }) => [days, loggedDays])).toEqual([
      [65, 25],
      [27, 10],
    ]);
    const hand = 65 * (kwh.filter((_, at) => at % 7 < 5).reduce((a, b) => a + b) / 25) + 27 * 0.1;
    expect(estimate.energyKwh.value).toBeCloseTo(hand, 9);
    expect(estimate.energyKwh.low).toBeLessThan(hand);
    expect(estimate.energyKwh.high).toBeGreaterThan(hand);
  });

  it("has a working whose terms give the figure", () => {
    const estimate = seasonEstimate(
      logged([1, 2, 3, 4, 5, 6]),
      { from: "2025-06-01", to: "2025-08-31" },
      OFFICE.occupiedHours,
    );
    if (estimate.status !== "ok") throw new Error(estimate.message);
    const working = seasonWorking(estimate, "log.csv");
    const [days, perDay] = working.terms;
    expect((days?.value ?? 0) * (perDay?.value ?? 0)).toBeCloseTo(working.result.value, 9);
    const [sum, count] = perDay?.working?.terms ?? [];
    expect((sum?.value ?? 0) / (count?.value ?? 1)).toBeCloseTo(perDay?.value ?? 0, 9);
  });
});
