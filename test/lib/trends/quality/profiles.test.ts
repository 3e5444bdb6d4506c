import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom } from "@/lib/statistics/random";
import { isoWeekday } from "@/lib/time/civil-date";
import { offsetChanges } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import type { Grid } from "@/lib/trends/grid";
import { shiftsAtClockChanges } from "@/lib/trends/quality/clock-changes";
import { dailyProfile, localClock, QUARTERS } from "@/lib/trends/quality/daily-profile";
import { isShifted, profileLag } from "@/lib/trends/quality/profile-lag";

/** A box that runs from 07:00 to 18:00 with a bump at noon. */
const running = (quarter: number): number => {
  const k = (quarter + 10 * QUARTERS) % QUARTERS;
  return k >= 28 && k < 72 ? 0.2 + 0.05 * Math.sin(((k - 28) / 44) * Math.PI) : 0;
};

const profile = (shift: number): Float64Array => Float64Array.from({ length: QUARTERS }, (_, k) => running(k - shift));

describe("the shift between two daily profiles", () => {
  it("is recovered, whatever it is up to two hours, through noise and another size", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -8, max: 8 }),
        fc.integer(),
        fc.double({ min: 0.5, max: 5, noNaN: true }),
        (shift, seed, size) => {
          const random = seededRandom(seed);
          const second = profile(shift).map((each) => size * (each + 0.02 * (random() - 0.5)));
          expect(profileLag(profile(0), second)?.minutes).toBe(shift * 15);
        },
      ),
    );
  });

  it("is not given for a flat profile or one that is half unknown", () => {
    expect(profileLag(profile(0), new Float64Array(QUARTERS).fill(0.2))).toBeNull();
    expect(
      profileLag(
        profile(0),
        profile(0).map((each, k) => (k < 48 ? Number.NaN : each)),
      ),
    ).toBeNull();
  });

  it("counts as one only when it is clearly better than none", () => {
    const lag = { minutes: 60, correlation: 0.99, correlationUnmoved: 0.85 };
    expect(isShifted(lag, 15)).toBe(true);
    expect(isShifted({ ...lag, correlationUnmoved: 0.95 }, 15)).toBe(false);
    expect(isShifted({ ...lag, correlation: 0.89 }, 15)).toBe(false);
    expect(isShifted(lag, 75)).toBe(false);
  });
});

describe("a clock change that a point does not follow", () => {
  const zone = zoneTable("America/New_York");
  const START = Date.UTC(2025, 8, 1) / 1000;
  const grid: Grid = { startUtcSeconds: START, stepSeconds: 900, count: 300 * 96 };
  const span = { fromUtcSeconds: START, toUtcSeconds: START + 300 * 86_400 };
  const clock = localClock(grid, zone.localFromUtc);
  const of = {
    dayAt: (utcSeconds: number) => Math.floor(zone.localFromUtc(utcSeconds) / 86_400),
    countsDay: (day: number) => isoWeekday(day) <= 5,
  };
  const changes = offsetChanges(zone, span);
  const random = seededRandom(7);
  const noise = Float64Array.from({ length: grid.count }, () => 0.02 * (random() - 0.5));
  /** Airflow by the clock that `offsetAt` [s] sets. */
  const airflow = (offsetAt: (utcSeconds: number) => number): Float64Array =>
    Float64Array.from({ length: grid.count }, (_, i) => {
      const at = START + i * 900;
      const local = at + offsetAt(at);
      const day = Math.floor(local / 86_400);
      return (isoWeekday(day) <= 5 ? running(Math.floor((local - day * 86_400) / 900)) : 0) + (noise[i] as number);
    });

  it("is silent where the schedule follows the wall clock through both changes", () => {
    expect(changes).toHaveLength(2);
    expect(shiftsAtClockChanges(airflow(zone.offsetAt), clock, changes, of)).toEqual([]);
  });

  it("is named at each change, with its direction, where a clock keeps standard time all year", () => {
    const found = shiftsAtClockChanges(
      airflow(() => -5 * 3600),
      clock,
      changes,
      of,
    );
    // Back in November: what ran an hour late by the wall clock comes right, an hour earlier. In March the reverse.
    expect(found.map(({ bySeconds, lag }) => [bySeconds, lag.minutes])).toEqual([
      [-3600, -60],
      [3600, 60],
    ]);
  });

  it("is not looked for where too few days are recorded, and counts only days of the schedule", () => {
    const values = airflow(() => -5 * 3600);
    const [november] = changes;
    const cut = november ? Math.round((november.atUtcSeconds - START) / 900) + 4 * 96 : 0;
    expect(shiftsAtClockChanges(values.fill(Number.NaN, cut), clock, changes, of)).toEqual([]);
    const from = of.dayAt(START);
    expect(dailyProfile(values, clock, { ...of, fromDay: from, toDay: from + 14 }).days).toBe(10);
  });
});
