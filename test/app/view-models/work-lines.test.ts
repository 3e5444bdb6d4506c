import { describe, expect, it } from "vitest";
import { sizeOf, workLines } from "@/app/buildings/[buildingId]/imports/work-lines";
import { stretchOf } from "@/lib/services/imports/history";
import type { ImportAtWork } from "@/lib/services/trend-imports/at-work";

const NOW = 1_000_000;
const run = (changes: Partial<ImportAtWork>): ImportAtWork =>
  ({
    id: 7,
    fileName: "a.csv",
    state: "running",
    message: "",
    byteCount: 4_000_000,
    bytesToRead: 4_000_000,
    bytesRead: 1_000_000,
    rowsRead: 5_000,
    readingsRead: 20_000,
    findingsSoFar: {},
    stageStartedAtMs: NOW - 10_000,
    withdrawalAskedBy: null,
    ...changes,
  }) as ImportAtWork;

const line = (changes: Partial<ImportAtWork>) => workLines([run(changes)], NOW)[0];

describe("the line of a file at work", () => {
  it("says rows, readings a second and the time left by the share that was read", () => {
    // A quarter in 10 s: 30 s to go. 20,000 readings in 10 s: 2,000 a second.
    expect(line({})).toMatchObject({
      doneFraction: 0.25,
      stageWords: "being imported",
      facts: "5,000 rows, 2,000 readings/s, about 30 s left",
      findings: "No findings so far.",
      canCancel: true,
    });
    expect(line({ bytesRead: 80_000, rowsRead: 1 })?.facts).toMatch(/^1 row, .*about 8 min left$/);
    expect(line({ bytesRead: 39_999 })?.facts).toContain("time left not known yet");
    expect(line({ bytesRead: 4_000_000 })?.facts).toContain("about to end");
  });

  it("names the most frequent findings and counts the others", () => {
    const findingsSoFar = { gap: 2, "value-missing": 1_200, "status-bad": 30, "rows-sorted": 1, "sentinel-value": 5 };
    expect(line({ findingsSoFar })?.findings).toBe(
      "Findings so far: value missing 1,200, status bad 30, sentinel value 5, gap 2, and 1 more.",
    );
  });

  it("has no progress while its turn has not come, and none to cancel twice", () => {
    expect(line({ state: "received" })).toMatchObject({
      doneFraction: null,
      stageWords: "waits for its turn",
      facts: "4.0 MB",
      findings: "",
    });
    expect(line({ withdrawalAskedBy: "Robin Vale" })).toMatchObject({
      stageWords: "being cancelled",
      doneFraction: null,
      canCancel: false,
    });
    expect(line({ state: "done", withdrawalAskedBy: "Robin Vale" })?.stageWords).toBe("being undone");
    expect(line({ rowsRead: 0 })?.facts).toBe("4.0 MB, begun");
    expect(line({ bytesToRead: 0 })?.doneFraction).toBe(0);
  });

  it("prints sizes in a unit that suits them", () => {
    expect([999, 1_000, 51_595_515].map(sizeOf)).toEqual(["999 bytes", "1 kB", "52 MB"]);
  });
});

describe("a page of a long list", () => {
  it("is the nearest one to the page asked for, at 0, 1 and 500 things", () => {
    expect(stretchOf(1, 0, 50)).toEqual({ page: 1, pages: 1, first: 1, count: 0 });
    expect(stretchOf(9, 1, 50)).toEqual({ page: 1, pages: 1, first: 1, count: 1 });
    expect(stretchOf(10, 500, 50)).toEqual({ page: 10, pages: 10, first: 451, count: 500 });
    expect(stretchOf(11, 500, 50).page).toBe(10);
    expect(stretchOf(-3, 500, 50).page).toBe(1);
    expect(stretchOf(Number.NaN, 500, 50).page).toBe(1);
  });
});
