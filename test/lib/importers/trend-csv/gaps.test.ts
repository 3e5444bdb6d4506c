import { describe, expect, test } from "vitest";
import { findGaps, rhythmOf, sortedInstants } from "@/lib/importers/trend-csv/gaps";

const minutes = (...list: number[]): Float64Array => Float64Array.from(list, (minute) => minute * 60);

describe("gaps", () => {
  test("a step is a gap beyond one and a half times the usual one, not at it", () => {
    expect(findGaps(minutes(0, 10, 25, 35), 600)).toEqual([]);
    expect(findGaps(minutes(0, 10, 26, 36), 600)).toEqual([{ fromTs: 600, toTs: 1560, missing: 1 }]);
    expect(findGaps(minutes(0, 10, 40), 600)).toEqual([{ fromTs: 600, toTs: 2400, missing: 2 }]);
  });

  test("equal steps with one outage are interval data, irregular ones are change of value", () => {
    expect(rhythmOf(minutes(0, 15, 30, 45, 150, 165))).toEqual({ sampling: "interval", stepSeconds: 900 });
    expect(rhythmOf(minutes(0, 1, 22, 23, 204, 489))).toEqual({ sampling: "change-of-value", stepSeconds: null });
    expect(rhythmOf(minutes(0, 15))).toEqual({ sampling: "interval", stepSeconds: 900 });
    expect(rhythmOf(minutes(7))).toEqual({ sampling: "interval", stepSeconds: null });
  });

  test("a poll that comes a few seconds late is still at intervals", () => {
    const late = Float64Array.from({ length: 50 }, (_, i) => i * 900 + (i % 7));
    expect(rhythmOf(late).sampling).toBe("interval");
  });

  test("instants are put in order and counted once", () => {
    expect([...sortedInstants(Float64Array.of(3, 1, 2, 2))]).toEqual([1, 2, 3]);
  });
});
