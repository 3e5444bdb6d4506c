import { describe, expect, it } from "vitest";
import { standingLine } from "@/app/buildings/[buildingId]/standing-words";
import type { Behind, Kept } from "@/lib/services/kept/read-kept";
import type { ImportAtWork } from "@/lib/services/trend-imports/at-work";
import { TEST_NOW } from "@/test/support/test-clock";

const building = { timeZone: "America/Chicago" };
const kept = (behind: Partial<Behind> | null, workedOutAtMs: number | null = TEST_NOW): Kept<unknown> => ({
  result: workedOutAtMs === null ? null : {},
  workedOutAtMs,
  behind: behind && { changed: [], progress: null, failure: null, ...behind },
});
const run = (changes: Partial<ImportAtWork> = {}) =>
  ({ fileName: "year.csv", state: "running", bytesRead: 43, bytesToRead: 100, ...changes }) as ImportAtWork;

describe("how figures stand, in words", () => {
  it("says nothing when all are of now, whatever is being imported", () => {
    expect(standingLine([kept(null)], building, [])).toBeNull();
    expect(standingLine([kept(null)], building, [run()])).toBeNull();
  });

  it("gives the time of the oldest and names what has changed since", () => {
    const shown = [kept({ changed: ["building"] }), kept({ changed: ["building", "reports"] }, TEST_NOW - 3_600_000)];
    expect(standingLine(shown, building, [])).toEqual({
      title: "Worked out 1 Jul 2025, 06:00, before a change of the settings and newer comfort reports",
      sentences: ["The figures follow by themselves."],
      doneFraction: null,
    });
  });

  it("names the import now running, how far it is, and how many files wait", () => {
    const behind = [kept({ changed: ["trends", "mapping", "assumptions"] })];
    const line = standingLine(behind, building, [run(), run({ state: "queued" }), run({ state: "waiting" })]);
    expect(line).toEqual({
      title: "Worked out 1 Jul 2025, 07:00, before the imports now running and a change of the assumptions",
      sentences: [
        "year.csv is being imported, 43 % of it read, and 1 more file waits. The figures follow by themselves when that is done.",
      ],
      doneFraction: 0.43,
    });
  });

  it("tells how far the work is, and that there is no result yet", () => {
    const first = kept({ changed: ["trends"], progress: { done: 12, of: 60 } }, null);
    expect(standingLine([first, kept(null)], building, [])).toEqual({
      title: "Being worked out for the first time",
      sentences: ["At work: 12 of 60 zones done. The figures follow by themselves."],
      doneFraction: 0.2,
    });
  });

  it("reports a try that failed, and what becomes of it", () => {
    const failure = { atMs: TEST_NOW + 60_000, message: "The program that works it out broke down." };
    expect(standingLine([kept({ changed: ["trends"], failure })], building, [])?.sentences).toEqual([
      "The try of 1 Jul 2025, 07:01 failed. The program that works it out broke down. What was shown before stays.",
      "It is tried again a minute later, when this page is open.",
    ]);
  });
});
