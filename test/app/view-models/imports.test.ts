import { describe, expect, it } from "vitest";
import { findingLines, rowItems } from "@/app/buildings/[buildingId]/imports/[runId]/view-model";
import { fieldErrorsOfForm, mappingFromForm } from "@/app/buildings/[buildingId]/imports/mapping/form";
import { mappingLede, mappingRow } from "@/app/buildings/[buildingId]/imports/mapping/view-model";
import { outcomeLines, waitingSentence } from "@/app/buildings/[buildingId]/imports/view-model";
import type { ImportRun } from "@/lib/services/imports/history";
import type { MappingLine } from "@/lib/services/trend-imports/mapping-lines";

const line = (changes: Partial<MappingLine> = {}): MappingLine => ({
  name: "VAV-2-14 ZN-T",
  runIds: [1],
  summary: {
    name: "VAV-2-14 ZN-T",
    kind: "numeric",
    unitAsWritten: null,
    unit: null,
    sampling: "interval",
    readings: 12_000,
    missing: 0,
    firstUtc: "2026-07-06T02:00:00Z",
    lastUtc: "2026-07-08T13:00:00Z",
    first: 72.1,
    last: 71,
  },
  proposal: { kind: "zone-air-temp", skip: false, confidence: "high", reason: "by its name", zoneId: 5 },
  known: null,
  leftOutBefore: false,
  continues: null,
  unitAsk: { what: "unit", choices: ["degF", "degC", "other"], proposal: "degF", question: "Which?" },
  ...changes,
});

describe("a row of the mapping table", () => {
  it("begins with the proposal, its unit and the days in the building's zone", () => {
    const row = mappingRow(line(), 3, "America/Chicago");
    expect(row).toMatchObject({
      index: 3,
      what: "zone-air-temp",
      zoneId: "5",
      unit: "degF",
      why: "high confidence: by its name",
    });
    // 02:00 UTC is the evening before in Chicago.
    expect(row.holds).toMatch(/^12.000 readings, 5 Jul\w* 2026 to 8 Jul\w* 2026; first 72\.1, last 71$/);
  });

  it("begins with what was settled before, unit and leaving out included", () => {
    const known = { kind: "cooling-setpoint" as const, zoneId: 7, fileUnit: "degC" };
    expect(mappingRow(line({ known }), 0, "UTC")).toMatchObject({
      what: "cooling-setpoint",
      zoneId: "7",
      unit: "degC",
      why: "as mapped before",
    });
    expect(mappingRow(line({ leftOutBefore: true }), 0, "UTC")).toMatchObject({ what: "skip", why: "left out before" });
  });

  it("leaves open what nothing settles", () => {
    const proposal = { kind: null, skip: false, confidence: "low", reason: "choose", zoneId: null } as const;
    expect(mappingRow(line({ proposal, unitAsk: null }), 0, "UTC")).toMatchObject({ what: "", zoneId: "", unit: "" });
  });

  it("is counted in the page's sentence", () => {
    const task = {
      lines: [line(), line({ known: { kind: "occupancy", zoneId: 1, fileUnit: "state" } })],
      waiting: [{} as ImportRun],
    };
    expect(mappingLede(task)).toBe(
      "One file holds 2 points, 1 of them mapped before. Check what is proposed; nothing is stored before you confirm.",
    );
  });
});

describe("the mapping form", () => {
  const values = {
    pointCount: "3",
    "name.0": "A",
    "what.0": "airflow",
    "zone.0": "5",
    "unit.0": "cfm",
    "name.1": "B",
    "what.1": "skip",
    "name.2": "C",
    "what.2": "",
    "answer.4.date-order": "dmy",
    "answer.4.flag-column": "0, 192",
    "answer.9.value-column": "",
  };

  it("reads choices by point and answers by run; an open row is left to be asked about", () => {
    expect(mappingFromForm(values)).toEqual({
      points: { A: { skip: false, kind: "airflow", zoneId: 5, unit: "cfm" }, B: { skip: true } },
      answersByRun: { "4": { dateOrder: "dmy", flagColumn: { good: ["0", "192"] } } },
    });
  });

  it("puts errors beside the row that they are about", () => {
    const errors = { "points.C": "C: say what it is.", "answers.4.clock": "When?" };
    expect(fieldErrorsOfForm(errors, values)).toEqual({ "what.2": "C: say what it is.", "answer.4.clock": "When?" });
  });
});

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
