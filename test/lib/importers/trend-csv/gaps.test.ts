import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { missingIn, type Rhythm, sortedInstants } from "@/lib/importers/trend-csv/gaps";
import { InstantTally } from "@/lib/importers/trend-csv/instant-tally";

const minutes = (...list: number[]): Float64Array => Float64Array.from(list, (minute) => minute * 60);

function tallyOf(...parts: Float64Array[]): InstantTally {
  const tally = new InstantTally({ kept: 0 });
  for (const part of parts) tally.add(part);
  return tally;
}
const rhythmOf = (...parts: Float64Array[]): Rhythm => tallyOf(...parts).rhythm();
const gapsOf = (instants: Float64Array, step: number) =>
  tallyOf(instants)
    .gaps(step)
    .flatMap(({ length, places }) => places.map((fromTs) => ({ fromTs, length, missing: missingIn(length, step) })));

describe("gaps", () => {
  test("a step is a gap beyond one and a half times the usual one, not at it", () => {
    expect(gapsOf(minutes(0, 10, 25, 35), 600)).toEqual([]);
    expect(gapsOf(minutes(0, 10, 26, 36), 600)).toEqual([{ fromTs: 600, length: 960, missing: 1 }]);
    expect(gapsOf(minutes(0, 10, 40), 600)).toEqual([{ fromTs: 600, length: 1800, missing: 2 }]);
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

  test("a log with a thousand different steps has no rhythm, however long it is", () => {
    let at = 0;
    const irregular = Float64Array.from({ length: 5000 }, (_, i) => {
      at += 60 + ((i * 7919) % 4001);
      return at;
    });
    expect(rhythmOf(irregular)).toEqual({ sampling: "change-of-value", stepSeconds: null });
  });

  test("instants are put in order and counted once", () => {
    expect([...sortedInstants(Float64Array.of(3, 1, 2, 2))]).toEqual([1, 2, 3]);
  });
});

describe("instants of a file in parts", () => {
  test("have the rhythm and the gaps of the whole, in whatever order and overlap the parts come", () => {
    const log = fc.uniqueArray(fc.integer({ min: 0, max: 400 }), { minLength: 3, maxLength: 60 });
    fc.assert(
      fc.property(log, fc.integer({ min: 1, max: 5 }), fc.boolean(), (list, count, shuffled) => {
        const instants = minutes(...list.map((each) => each * 15)).sort();
        const parts = Array.from({ length: count }, (_, k) =>
          instants.filter((_, i) => (shuffled ? i % count === k : Math.floor((i * count) / instants.length) === k)),
        );
        const [whole, pieces] = [tallyOf(instants), tallyOf(...parts)];
        expect(pieces.rhythm()).toEqual(whole.rhythm());
        expect(pieces.gaps(900).sort((a, b) => a.length - b.length)).toEqual(
          whole.gaps(900).sort((a, b) => a.length - b.length),
        );
      }),
    );
  });
});
