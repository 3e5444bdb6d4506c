import { describe, expect, it } from "vitest";
import { filterFrom, filterQuery, linesShown, rowsPerPage } from "@/app/buildings/[buildingId]/imports/mapping/filter";
import {
  bulkChangeFrom,
  enteredFromForm,
  fieldErrorsOfForm,
  rowText,
  selectedNames,
} from "@/app/buildings/[buildingId]/imports/mapping/form";
import { fileQuestions } from "@/app/buildings/[buildingId]/imports/mapping/questions";
import { mappingLede, mappingRow } from "@/app/buildings/[buildingId]/imports/mapping/view-model";
import type { FileAsk } from "@/lib/services/trend-imports/mapping";
import { mappingLine } from "@/test/factories/mapping-line";

const FILES = new Map([
  [1, "trend.csv"],
  [2, "other.csv"],
]);
const CHICAGO = { timeZone: "America/Chicago", fileNames: FILES };
const OPEN = { kind: null, skip: false, confidence: "low", reason: "choose", zoneId: null } as const;

describe("a row of the mapping table", () => {
  it("begins with the proposal, its unit, its reason and the times of the building's zone", () => {
    const row = mappingRow(mappingLine(), 3, CHICAGO);
    expect(row).toMatchObject({
      index: 3,
      files: "trend.csv",
      what: "zone-air-temp",
      zoneId: "5",
      unit: "degF",
      unitWhy: "by the values, around 71.50",
      confidence: "high",
      why: "by its name",
      open: true,
    });
    expect(row.holds).toBe("12,000 readings, mean 71.50");
    // 02:00 UTC is the evening before in Chicago.
    expect(row.span).toEqual(["5 Jul 2026, 21:00: 72.10", "8 Jul 2026, 08:00: 71.00"]);
    expect(row.spark).toEqual([72.1, 71.5, 70.9, 71]);
  });

  it("begins with what was settled before, unit and leaving out included", () => {
    const known = { kind: "cooling-setpoint" as const, zoneId: 7, fileUnit: "degC" };
    expect(mappingRow(mappingLine({ known }), 0, CHICAGO)).toMatchObject({
      what: "cooling-setpoint",
      zoneId: "7",
      unit: "degC",
      why: "as mapped before",
      open: false,
    });
    expect(mappingRow(mappingLine({ leftOutBefore: true }), 0, CHICAGO)).toMatchObject({ what: "skip", open: false });
  });

  it("leaves open what nothing settles, and shows what was entered", () => {
    const line = { proposal: OPEN, unitAsk: null };
    expect(mappingRow(mappingLine(line), 0, CHICAGO)).toMatchObject({ what: "", zoneId: "", unit: "", open: true });
    const entry = { what: "ask-again", zoneId: null, unit: null, continues: null } as const;
    expect(mappingRow(mappingLine(line, entry), 0, CHICAGO)).toMatchObject({ what: "ask-again", open: false });
  });

  it("draws no line of fewer than four values, and has no times while the date order is not known", () => {
    const { summary } = mappingLine();
    const unknown = { ...summary, firstUtc: null, lastUtc: null, first: null, last: null, spot: undefined };
    const row = mappingRow(mappingLine({ summary: unknown }), 0, CHICAGO);
    expect(row.spark).toEqual([]);
    expect(row.span.join()).toContain("not known yet");
  });

  it("is counted in the page's sentence", () => {
    const known = { kind: "occupancy" as const, zoneId: 1, fileUnit: "state" };
    expect(
      mappingLede({ lines: [mappingLine(), mappingLine({ known, unitAsk: null })], waiting: [{ fileName: "a.csv" }] }),
    ).toBe("a.csv holds 2 points, 1 of them open. Check what is proposed; nothing is stored before you confirm.");
    expect(mappingLede({ lines: [mappingLine()], waiting: [{}, {}] })).toMatch(
      /^2 files hold one point, not settled yet/,
    );
    expect(mappingLede({ lines: [mappingLine({ leftOutBefore: true })], waiting: [{}] })).toContain("all settled");
  });
});

describe("the filter of the mapping page", () => {
  const known = { kind: "occupancy" as const, zoneId: 1, fileUnit: "state" };
  const lines = [
    mappingLine({ name: "VAV-1 ZN-T" }),
    mappingLine({ name: "VAV-2 OCC", known, unitAsk: null }),
    mappingLine({ name: "AHU Temp", proposal: OPEN }),
  ];
  const shown = (changes: Record<string, string>) =>
    linesShown(lines, filterFrom(changes, false)).map((line) => line.name);

  it("looks for words in any order, for open ones and by kind", () => {
    expect(shown({ q: "t vav" })).toEqual(["VAV-1 ZN-T"]);
    expect(shown({ show: "open" })).toEqual(["VAV-1 ZN-T", "AHU Temp"]);
    expect(shown({ show: "settled" })).toEqual(["VAV-2 OCC"]);
    expect(shown({ what: "occupancy" })).toEqual(["VAV-2 OCC"]);
    expect(shown({ what: "none" })).toEqual(["AHU Temp"]);
  });

  it("begins with the open ones when a profile answers the others, and comes back from its address", () => {
    expect(filterFrom({}, true).show).toBe("open");
    expect(filterFrom({}, false)).toEqual({ text: "", show: "all", what: "", page: 1 });
    const filter = { text: "a&b c", show: "settled", what: "airflow", page: 7 } as const;
    expect(filterFrom(Object.fromEntries(new URLSearchParams(filterQuery(filter))), false)).toEqual(filter);
    for (const page of ["-3", "x", "0", ""]) expect(filterFrom({ page, show: "odd" }, false).page).toBe(1);
  });

  it("has fewer rows a page when there are many zones to choose from", () => {
    expect([0, 40, 200, 5000].map(rowsPerPage)).toEqual([100, 100, 40, 25]);
  });
});

describe("the mapping form", () => {
  const values = {
    pointCount: "4",
    "name.0": "A",
    "what.0": "airflow",
    "zone.0": "5",
    "unit.0": "cfm",
    "was.0": rowText("", "", "", ""),
    "name.1": "B",
    "what.1": "skip",
    "was.1": rowText("skip", "", "", ""),
    "name.2": "C",
    "what.2": "",
    "was.2": rowText("", "", "", ""),
    "name.3": "D",
    "what.3": "",
    "zone.3": "6",
    "was.3": rowText("", "", "", ""),
    "select.1": "on",
    "answer.date-order.0": "dmy",
    "runs.date-order.0": "4,9",
    "answer.flag-column.1": "0, 192",
    "runs.flag-column.1": "4",
    "answer.value-column.2": "",
    "runs.value-column.2": "9",
    "source.0": "k1",
    "profile.0": " July ",
  };
  const flow = { what: "airflow", zoneId: 5, unit: "cfm", continues: null };
  const half = { what: "", zoneId: 6, unit: null, continues: null };

  it("takes rows that were touched, half done ones included, and all that say what they are when confirmed", () => {
    expect(enteredFromForm(values, "touched").entries).toEqual({ A: flow, D: half });
    const left = { what: "skip", zoneId: null, unit: null, continues: null };
    expect(enteredFromForm(values, "all").entries).toEqual({ A: flow, B: left, D: half });
  });

  it("gives an answer to each file that was asked together, and names to the sources", () => {
    const { answersByRun, profileNames } = enteredFromForm(values, "touched");
    expect(answersByRun).toEqual({
      "4": { dateOrder: "dmy", flagColumn: { good: ["0", "192"] } },
      "9": { dateOrder: "dmy" },
    });
    expect(profileNames).toEqual({ k1: "July" });
  });

  it("sets for the ticked rows, or for all of the page, what is not left as it is", () => {
    expect(selectedNames(values)).toEqual(["B"]);
    expect(selectedNames({ ...values, allOfPage: "on" })).toEqual(["A", "B", "C", "D"]);
    expect(bulkChangeFrom({ "bulk.what": "", "bulk.zone": "none", "bulk.unit": "degC" })).toEqual({
      zoneId: null,
      unit: "degC",
    });
    expect(bulkChangeFrom({ "bulk.what": "airflow", "bulk.zone": "7" })).toEqual({ what: "airflow", zoneId: 7 });
    expect(bulkChangeFrom({})).toEqual({});
  });

  it("puts errors beside the row or question that they are about, and gathers those that are not shown", () => {
    const errors = { "points.C": "C: say what it is.", "answers.9.date-order": "Which?", "points.Z 9": "Z 9: open." };
    expect(fieldErrorsOfForm(errors, values)).toEqual({
      "what.2": "C: say what it is.",
      "answer.date-order.0": "Which?",
      show: "Not shown here, and open: Z 9. Show only the open ones to look at them.",
    });
  });

  it("does not write out thousands of errors", () => {
    const many = Object.fromEntries(Array.from({ length: 8000 }, (_, i) => [`points.P${i}`, `P${i}: open.`]));
    expect(Object.values(fieldErrorsOfForm(many, values))).toEqual([
      "Not shown here, and open: P0, P1, P2 and 7997 more. Show only the open ones to look at them.",
    ]);
  });
});

describe("questions about files", () => {
  const ask = (runId: number, source: string): FileAsk => ({
    runId,
    fileName: `${runId}.csv`,
    ask: { what: "date-order", choices: ["mdy", "dmy"], question: "Which number is the month?" },
    given: {},
    byProfile: false,
    source,
  });

  it("are asked once for files of one source, with the first and last reading under either order", () => {
    const meanings = new Map([
      [
        1,
        [
          { order: "mdy" as const, firstUtc: "2026-03-04T14:00:00Z", lastUtc: "2026-03-04T14:30:00Z" },
          { order: "dmy" as const, firstUtc: "2026-04-03T13:00:00Z", lastUtc: "2026-04-03T13:30:00Z" },
        ],
      ],
    ]);
    const questions = fileQuestions([ask(1, "a"), ask(2, "a"), ask(3, "b")], meanings, "America/Chicago");
    expect(questions.map(({ runIds }) => runIds)).toEqual([[1, 2], [3]]);
    expect(questions[0]?.choices.map(({ label, meaning }) => [label, meaning])).toEqual([
      ["month first", "1.csv: first reading 4 Mar 2026, 08:00, last 4 Mar 2026, 08:30"],
      ["day first", "1.csv: first reading 3 Apr 2026, 08:00, last 3 Apr 2026, 08:30"],
    ]);
    expect(questions[1]?.choices.map(({ meaning }) => meaning)).toEqual(["", ""]);
  });
});
