import { describe, expect, test } from "vitest";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import { bytesOf } from "@/test/factories/trend-csv";
import { compareWithCase } from "@/test/support/check-values";
import { dstCases } from "@/test/support/dst-cases";

const HEADING = "Timestamp,VAV-2-14 ZN-T (°F)";
const read = (timeZone: string, rows: string[]) =>
  readTrendFile({ fileName: "change.csv", timeZone, bytes: bytesOf([HEADING, ...rows]) });

describe.each(dstCases())("a file over $name", (check) => {
  const { timeZone, stamps } = check.inputs;
  const rows = stamps.map((stamp, i) => `${stamp},${(70 + i / 100).toFixed(2)}`);
  const shiftSeconds = check.expected.shiftSeconds as number;

  test("each row gets the instant that another reading of the zone database says", async () => {
    const { points, rows: fates } = await read(timeZone, rows);
    compareWithCase(check, { shiftSeconds, utcSeconds: points[0]?.tsUtcSeconds ?? [] });
    expect(Array.from(points[0]?.values ?? [])).toEqual(stamps.map((_, i) => Number((70 + i / 100).toFixed(2))));
    expect(fates.accepted + fates.repaired).toBe(stamps.length);
    expect(fates.repaired > 0).toBe(shiftSeconds < 0);
  });

  test("the same rows newest first get the same instants", async () => {
    const { points } = await read(timeZone, [...rows].reverse());
    compareWithCase(check, { shiftSeconds, utcSeconds: points[0]?.tsUtcSeconds ?? [] });
  });
});

const forward = dstCases().filter((check) => check.inputs.skipped.length > 0);

test.each(forward)("a reading that the clock skips is asked about or held back: $name", async ({ inputs }) => {
  const { timeZone, stamps, skipped } = inputs;
  const change = stamps.findIndex((stamp) => stamp > (skipped[0] as string));
  const rows = [...stamps.slice(0, change), skipped[0], ...stamps.slice(change)].map((stamp, i) =>
    i === change ? `${stamp},99` : `${stamp},70`,
  );
  const { points, ask } = await read(timeZone, rows);
  expect(ask.some((each) => each.what === "clock") || !points[0]?.values.includes(99)).toBe(true);
});
