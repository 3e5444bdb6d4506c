import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { oddHours } from "@/lib/trends/quality/clock-change-hours";
import type { OffsetChange } from "@/lib/trends/quality/clock-changes";
import { hoursOf } from "@/lib/trends/quality/quality-point";
import { coverOf, recordOf } from "@/lib/trends/quality/record-cover";
import { sampleGaps } from "@/lib/trends/quality/sample-gaps";
import { othersMoved, smallestStep, unchangedRuns } from "@/lib/trends/quality/stuck-runs";
import { unitSwitches } from "@/lib/trends/quality/unit-switches";
import { unlikelyValues } from "@/lib/trends/quality/value-limits";
import { gapEvents, zoneGaps } from "@/lib/trends/quality/zone-gaps";
import type { PointSeries, Sampling } from "@/lib/trends/samples";

const T0 = 1_719_792_000;
const DAY = 86_400;

function series(sampling: Sampling, rows: readonly (readonly [number, number])[], decimals = 1): PointSeries {
  const ts = Float64Array.from(rows, ([at]) => at);
  return { sampling, samples: { ts, v: Int32Array.from(rows, ([, value]) => value), decimals } };
}

/** A sample every quarter of an hour for some days, without those that `lost` names. */
function quarterly(days: number, value: (i: number) => number, lost: (i: number) => boolean = () => false) {
  const rows = Array.from({ length: days * 96 }, (_, i) => [T0 + i * 900, value(i)] as const);
  return series(
    "interval",
    rows.filter((_, i) => !lost(i)),
  );
}

describe("gaps of a record", () => {
  it("begin where the last sample's step ends, longest first", () => {
    const point = quarterly(
      2,
      () => 220,
      (i) => i === 5 || (i >= 40 && i < 60),
    );
    expect(sampleGaps(point)).toEqual([
      { fromUtcSeconds: T0 + 40 * 900, toUtcSeconds: T0 + 60 * 900 },
      { fromUtcSeconds: T0 + 5 * 900, toUtcSeconds: T0 + 6 * 900 },
    ]);
  });

  it("are what the samples leave of the record, whatever is lost", () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 96, maxLength: 96 }), (lost) => {
        // One in two at most, so that the usual step stays.
        const point = quarterly(
          4,
          () => 220,
          (i) => i > 0 && i < 383 && i % 2 === 1 && i % 3 === 0 && lost[i % 96] === true,
        );
        const hours = sampleGaps(point).reduce((sum, gap) => sum + hoursOf(gap), 0);
        expect(hours + point.samples.ts.length / 4).toBeCloseTo(96, 9);
      }),
    );
  });

  it("is no gap when a change-of-value point is silent as it always is, but a week and more may be one", () => {
    const daily = [...Array(40).keys()].filter((k) => k < 20 || k >= 30).map((k) => [T0 + k * DAY, 230] as const);
    expect(sampleGaps(series("change-of-value", daily))).toEqual([
      { fromUtcSeconds: T0 + 19 * DAY, toUtcSeconds: T0 + 30 * DAY },
    ]);
    expect(sampleGaps(series("change-of-value", daily.slice(0, 20)))).toEqual([]);
  });

  it("of several points at one time are one event", () => {
    const away = (i: number): boolean => i >= 100 && i < 140;
    const point = (kind: "zone-air-temp" | "airflow" | "reheat-valve", lost: (i: number) => boolean) => ({
      pointId: 1,
      kind,
      name: kind,
      series: quarterly(3, () => 220, lost),
    });
    const gaps = zoneGaps([
      point("zone-air-temp", away),
      point("airflow", (i) => away(i) || i === 99),
      point("reheat-valve", (i) => i >= 200 && i < 220),
    ]);
    expect(gaps.map(({ kinds }) => kinds)).toEqual([["zone-air-temp", "airflow"], ["reheat-valve"]]);
    const short = gapEvents([point("airflow", (i) => away(i) || i === 10)], 1);
    expect([short.events.length, short.shorter]).toEqual([1, 1]);
  });

  it("leave a record from end to end, held against the one it should cover", () => {
    const changes = series("change-of-value", [
      [T0 + 8 * DAY, 230],
      [T0 + 9 * DAY, 260],
    ]);
    const wanted = { fromUtcSeconds: T0, toUtcSeconds: T0 + 30 * DAY };
    const record = recordOf(changes);
    expect(record).toEqual({ fromUtcSeconds: T0 + 8 * DAY, toUtcSeconds: T0 + 10 * DAY });
    expect(record && coverOf(record, wanted)).toEqual({ share: 2 / 30, coveredDays: 2, ofDays: 30 });
    expect(recordOf(series("interval", []))).toBeNull();
  });
});

describe("a sensor that stands still", () => {
  const wander = (i: number): number => 220 + ((i * 7) % 5);

  it("is seen in the stretch and the value, and only from 24 h on", () => {
    const stuck = quarterly(4, (i) => (i >= 96 && i < 96 + 100 ? 231 : wander(i)));
    expect(unchangedRuns(stuck)).toEqual([
      { fromUtcSeconds: T0 + DAY, toUtcSeconds: T0 + DAY + 100 * 900, value: 23.1 },
    ]);
    expect(unchangedRuns(quarterly(4, (i) => (i >= 96 && i < 96 + 95 ? 231 : wander(i))))).toEqual([]);
  });

  it("goes on over a lost sample, and ends at a gap in which it could have moved", () => {
    const value = (i: number): number => (i >= 50 && i < 250 ? 231 : wander(i));
    expect(unchangedRuns(quarterly(4, value, (i) => i === 100))).toHaveLength(1);
    expect(unchangedRuns(quarterly(4, value, (i) => i >= 140 && i < 150)).map((run) => hoursOf(run))).toEqual([25]);
  });

  it("is allowed 72 h on change of value, in which the repeated value stands", () => {
    const rows = [0, 1, 2, 3, 4].map((day) => [T0 + day * DAY, day < 4 ? 231 : 240] as const);
    expect(unchangedRuns(series("change-of-value", rows))).toEqual([
      { fromUtcSeconds: T0, toUtcSeconds: T0 + 4 * DAY, value: 23.1 },
    ]);
    expect(unchangedRuns(series("change-of-value", rows.slice(2)))).toEqual([]);
  });

  it("is held against the others: half a kelvin, and three of its own steps", () => {
    expect(othersMoved([0.2, 0.6, 0.9], 0.1)).toBe(true);
    expect(othersMoved([0.2, 0.4, 0.9], 0.1)).toBe(false);
    expect(othersMoved([1.2, 1.2, 1.4], 0.5)).toBe(false);
    expect(othersMoved([], 0.1)).toBeNull();
    expect(smallestStep(quarterly(1, wander))).toBeCloseTo(0.2, 12);
    expect(smallestStep(quarterly(1, () => 220))).toBeNull();
  });

  it("is never found where every sample differs from the one before", () => {
    const steps = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 300, maxLength: 300 });
    fc.assert(
      fc.property(steps, (made) => {
        let level = 200;
        const values = made.map((step, i) => {
          level += i % 2 === 0 ? step : -step;
          return level;
        });
        expect(
          unchangedRuns(
            series(
              "interval",
              values.map((value, i) => [T0 + i * 900, value]),
            ),
          ),
        ).toEqual([]);
      }),
    );
  });
});

describe("values that can hardly be", () => {
  it("are counted with their range and time, by the kind of the point", () => {
    const point = quarterly(1, (i) => (i === 10 ? -2500 : i === 20 ? 910 : 220));
    expect(unlikelyValues("zone-air-temp", point)).toEqual({
      samples: 2,
      ofSamples: 96,
      lowest: -250,
      highest: 91,
      fromUtcSeconds: T0 + 9000,
      toUtcSeconds: T0 + 18_000,
    });
    expect(
      unlikelyValues(
        "zone-air-temp",
        quarterly(1, () => 220),
      ),
    ).toBeNull();
    expect(
      unlikelyValues(
        "damper-position",
        quarterly(1, (i) => (i === 0 ? 1030 : 1004)),
      )?.samples,
    ).toBe(1);
    expect(
      unlikelyValues(
        "airflow",
        quarterly(1, (i) => (i === 0 ? -1 : 0)),
      )?.samples,
    ).toBe(1);
  });
});

describe("a unit that changes in the middle", () => {
  const level = (values: readonly number[], days: number) =>
    Array.from({ length: days }, (_, k) => values[k % values.length] as number);

  it("is found where °C are read as °F from a day on, and where °F are not converted", () => {
    const right = level([22, 22.4, 21.8], 12);
    const asF = [...right.slice(0, 6), 9, ...right.slice(7).map((each) => (each - 32) / 1.8)];
    expect(unitSwitches(asF)).toMatchObject([{ day: 6, to: "read-as-fahrenheit" }]);
    const notConverted = [...right.slice(0, 6), 50, ...right.slice(7).map((each) => each * 1.8 + 32)];
    expect(unitSwitches(notConverted)).toMatchObject([{ day: 6, to: "not-converted" }]);
  });

  it("is found there and back", () => {
    const days = level([22, 22.4], 20).map((each, k) => (k >= 6 && k < 13 ? (each - 32) / 1.8 : each));
    expect(unitSwitches(days).map(({ day }) => day)).toEqual([6, 13]);
  });

  it("is never taken from weather, setbacks or holes", () => {
    const day = fc.option(fc.double({ min: 14, max: 32, noNaN: true }), { nil: null });
    fc.assert(
      fc.property(fc.array(day, { maxLength: 40 }), (days) => {
        expect(unitSwitches(days)).toEqual([]);
      }),
    );
  });
});

describe("hours at a clock change", () => {
  const back: OffsetChange = { atUtcSeconds: T0 + DAY, bySeconds: -3600 };
  const forward: OffsetChange = { atUtcSeconds: T0 + DAY, bySeconds: 3600 };
  const any = () => 220;

  it("are in order when every hour of UTC is there", () => {
    expect(oddHours(quarterly(2, any), [back, forward])).toEqual([]);
  });

  it("lack the pass that an export without offsets leaves out", () => {
    const secondLost = quarterly(2, any, (i) => i >= 96 && i < 100);
    expect(oddHours(secondLost, [back])).toEqual([{ ...back, fault: "missing", pass: "second" }]);
    const firstLost = quarterly(2, any, (i) => i >= 92 && i < 96);
    expect(oddHours(firstLost, [back])).toEqual([{ ...back, fault: "missing", pass: "first" }]);
    expect(oddHours(secondLost, [forward])).toEqual([{ ...forward, fault: "missing", pass: "after" }]);
  });

  it("hold an hour twice when both passes stand in one", () => {
    const rows = Array.from({ length: 192 }, (_, i) => [T0 + i * 900, 220] as const);
    const doubled = [...rows, ...[0, 1, 2, 3].map((k) => [T0 + DAY - 3600 + k * 900 + 60, 221] as const)];
    const point = series(
      "interval",
      doubled.sort(([a], [b]) => a - b),
    );
    expect(oddHours(point, [back])).toEqual([{ ...back, fault: "doubled", pass: "first" }]);
  });

  it("say nothing within a longer gap, nor of change-of-value points", () => {
    expect(
      oddHours(
        quarterly(2, any, (i) => i >= 80 && i < 110),
        [back],
      ),
    ).toEqual([]);
    expect(oddHours({ ...quarterly(2, any, (i) => i >= 96 && i < 100), sampling: "change-of-value" }, [back])).toEqual(
      [],
    );
  });
});
