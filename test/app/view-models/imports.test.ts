import { describe, expect, it } from "vitest";
import { findingLines, rowItems } from "@/app/buildings/[buildingId]/imports/[runId]/view-model";
import { outcomeLines, waitingSentence } from "@/app/buildings/[buildingId]/imports/view-model";
import type { ImportRun } from "@/lib/services/imports/history";

describe("what became of files", () => {
  const said = (shown: string[][], all: number, refused: number) =>
    outcomeLines(JSON.stringify({ shown, counts: { all, refused } }));

  it("names each refusal, and the others together", () => {
    const lines = said(
      [
        ["refused", "a.csv", "No dates."],
        ["waiting", "b.csv", "Read."],
        ["waiting", "c.csv", "Read."],
      ],
      3,
      1,
    );
    expect(lines.map(({ kind, title, message }) => [kind, title, message])).toEqual([
      ["note", "2 files", "Read."],
      ["caution", "a.csv was refused", "No dates."],
    ]);
    expect(said([["imported", "z.csv", "2 zones added."]], 1, 0)[0]).toMatchObject({ kind: "done", title: "z.csv" });
  });

  it("makes nothing of an address that holds something else", () => {
    expect(outcomeLines(undefined)).toEqual([]);
    expect(outcomeLines("%%%")).toEqual([]);
    expect(outcomeLines('{"shown":1}')).toEqual([]);
  });

  it("counts the trend files that wait, and only those", () => {
    expect([0, 1, 2].map(waitingSentence)).toEqual([
      null,
      "One trend file waits for its mapping",
      "2 trend files wait for their mapping",
    ]);
  });

  it("prints the fates of the rows as a sum", () => {
    const run = {
      kind: "trends",
      rowsInFile: 10,
      rowsAccepted: 4,
      rowsRepaired: 1,
      rowsHeldBack: 2,
      rowsRejected: 2,
      rowsIgnored: 1,
      samplesAdded: 9,
      samplesChanged: 0,
      samplesSame: 3,
    } as ImportRun;
    expect(rowItems(run).map(({ value }) => value)).toEqual([
      "10 = 4 accepted + 1 repaired + 2 held back + 2 rejected + 1 ignored",
      "9 added, 0 changed, 3 as they were",
    ]);
    expect(rowItems({ ...run, rowsInFile: 0 })).toEqual([]);
  });

  it("shows findings as they were worded when the file was read", () => {
    const findings = [
      { code: "gap", severity: "caution", sentence: "No rows." },
      { code: "columns-not-used", severity: "note" },
    ];
    expect(findingLines({ inspection: { findings } }).map(({ sentence }) => sentence)).toEqual([
      "No rows.",
      "columns not used",
    ]);
    expect(findingLines({ inspection: null })).toEqual([]);
  });
});
