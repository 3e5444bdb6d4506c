import { expect, it } from "vitest";
import { demoSpan, startOfLocalDate } from "@/db/seed/demo-calendar";
import type { RecordedTrend } from "@/db/seed/record-trend";
import { zoneTrends } from "@/db/seed/zone-trends";
import { simulated } from "./simulated-year";

const june = simulated(demoSpan("2026-06-01", "2026-06-22"), ["2-04", "2-07", "2-09"]);
const trendsOf = (code: string): RecordedTrend[] => {
  const zone = june.zones.find(({ plan }) => plan.code === code);
  if (!zone) throw new Error(`no zone ${code}`);
  return zoneTrends(zone, june.calendar);
};
const trendOf = (code: string, kind: RecordedTrend["kind"]): RecordedTrend => {
  const trend = trendsOf(code).find((each) => each.kind === kind);
  if (!trend) throw new Error(`no ${kind} in ${code}`);
  return trend;
};

it("records seven points of a zone, without the one that was never set up", () => {
  expect(trendsOf("2-07").map(({ kind }) => kind).length).toBe(7);
  expect(trendsOf("2-04").map(({ kind }) => kind)).not.toContain("airflow");
  expect(trendsOf("2-09").map(({ kind }) => kind)).not.toContain("reheat-valve");
});

it("records zone air in tenths of a degree, within the noise of what it was, with a few samples lost", () => {
  const { ts, v, decimals } = trendOf("2-04", "zone-air-temp");
  const run = june.zones[0]?.run;
  expect(decimals).toBe(3);
  expect(ts.length).toBeLessThan(june.calendar.span.count);
  expect(ts.length).toBeGreaterThan(0.99 * june.calendar.span.count);
  ts.forEach((at, k) => {
    const step = (at - june.calendar.span.startUtcSeconds) / 900;
    expect((v[k] as number) % 100).toBe(0);
    expect(Math.abs((v[k] as number) / 1000 - (run?.airTempC[step] as number))).toBeLessThan(0.35);
  });
});

it("has one zone sensor that stands still for a week and moves before and after", () => {
  const { ts, v } = trendOf("2-07", "zone-air-temp");
  const from = startOfLocalDate("2026-06-08");
  const valuesIn = (low: number, high: number) =>
    new Set([...v].filter((_, k) => (ts[k] as number) >= low && (ts[k] as number) < high));
  expect(valuesIn(from, from + 7 * 86_400).size).toBe(1);
  expect(valuesIn(from - 7 * 86_400, from).size).toBeGreaterThan(5);
  expect(valuesIn(from + 7 * 86_400, from + 14 * 86_400).size).toBeGreaterThan(5);
});

it("records setpoints when they change and once a day, so that a day without change has one sample", () => {
  const { ts, v, sampling } = trendOf("2-07", "cooling-setpoint");
  expect(sampling).toBe("change-of-value");
  const onDate = (date: string) =>
    [...v].filter(
      (_, k) => (ts[k] as number) >= startOfLocalDate(date) && (ts[k] as number) < startOfLocalDate(date) + 86_400,
    );
  // A Tuesday: the night value told again, the occupied value at 05:00, the night value at 18:00.
  expect(onDate("2026-06-09")).toEqual([29444, 23333, 29444]);
  expect(onDate("2026-06-13")).toEqual([29444]);
});
