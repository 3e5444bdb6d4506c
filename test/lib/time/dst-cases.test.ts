import { describe, expect, test } from "vitest";
import { zoneTable } from "@/lib/time/zone-table";
import { compareWithCase } from "@/test/support/check-values";
import { dstCases, localSecondsOf } from "@/test/support/dst-cases";

describe.each(dstCases())("$name", (check) => {
  const { timeZone, stamps, folds, skipped } = check.inputs;
  const zone = zoneTable(timeZone);
  const utcSeconds = check.expected.utcSeconds as number[];

  test("every wall-clock reading is the instant that another reading of the zone database says", () => {
    const found = stamps.map((stamp, i) => {
      const instant = zone.utcFromLocal(localSecondsOf(stamp));
      if (instant.status === "unique") return instant.utcSeconds;
      if (instant.status === "missing") return Number.NaN;
      return folds[i] === 1 ? instant.secondUtcSeconds : instant.firstUtcSeconds;
    });
    const shiftSeconds = zone.offsetAt(utcSeconds.at(-1) as number) - zone.offsetAt(utcSeconds[0] as number);
    compareWithCase(check, { shiftSeconds, utcSeconds: found });
  });

  test("every instant is shown as that wall-clock reading", () => {
    expect(utcSeconds.map((utc) => zone.localFromUtc(utc))).toEqual(stamps.map(localSecondsOf));
  });

  test("readings are repeated where the clock went back, and skipped ones are said to be missing", () => {
    const repeated = stamps.filter((stamp) => zone.utcFromLocal(localSecondsOf(stamp)).status === "repeated");
    const twice = stamps.filter((stamp, i) => stamps.indexOf(stamp) !== i);
    expect(new Set(repeated)).toEqual(new Set(twice));
    expect(skipped.map((stamp) => zone.utcFromLocal(localSecondsOf(stamp)).status)).toEqual(
      skipped.map(() => "missing"),
    );
  });
});

test("the cases have changes in both directions, of half an hour too, and zones without any", () => {
  const shifts = new Set(dstCases().map((check) => check.expected.shiftSeconds));
  expect([...shifts].sort()).toEqual([-1800, -3600, 0, 1800, 3600].sort());
});
