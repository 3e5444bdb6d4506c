import { describe, expect, test } from "vitest";
import { inspectTrendFile } from "@/lib/importers/trend-csv/inspect-trend-file";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import type { TrendAnswers, TrendPoint, TrendReading } from "@/lib/importers/trend-csv/trend-file";
import { type ExpectedPoint, readTrendShapes, type TrendShape } from "../../../support/trend-shapes";

/** Shapes that are not read rightly yet; each is asserted to fail, so that progress is noticed. */
const notYetRead: readonly string[] = [];

const shapes = readTrendShapes();

const read = (shape: TrendShape, answers: TrendAnswers = {}): Promise<TrendReading> =>
  readTrendFile({
    fileName: shape.file,
    bytes: shape.bytes,
    ...shape.building,
    answers: { ...shape.given, ...answers },
  });

/** The answer that a choice of a question stands for. */
function answerOf(what: string, choice: string): TrendAnswers {
  if (what === "date-order") return { dateOrder: choice as "mdy" | "dmy" };
  if (what === "clock") return { clock: choice as "local-time" };
  if (what === "unit") return { unit: choice };
  if (what === "value-column") return { valueColumn: choice };
  throw new Error(`no answer is known for ${what}`);
}

const second = (utc: string): number => Date.parse(utc) / 1000;
const valueAt = (point: TrendPoint, i: number): number | string | undefined =>
  point.stateNames ? point.stateNames[point.values[i] ?? -1] : point.values[i];

function expectPoint(point: TrendPoint | undefined, expected: ExpectedPoint): void {
  expect(point, expected.name).toBeDefined();
  if (!point) return;
  const n = point.tsUtcSeconds.length;
  expect(point.name).toBe(expected.name);
  expect({ kind: point.kind, unitAsWritten: point.unitAsWritten, unit: point.unit, readings: n }).toEqual({
    kind: expected.kind,
    unitAsWritten: expected.unitAsWritten,
    unit: expected.unit,
    readings: expected.readings,
  });
  expect(point.tsUtcSeconds[0]).toBe(second(expected.firstUtc));
  expect(point.tsUtcSeconds[n - 1]).toBe(second(expected.lastUtc));
  expect(valueAt(point, 0)).toBe(expected.first);
  expect(valueAt(point, n - 1)).toBe(expected.last);
  if (expected.sum !== undefined)
    expect(point.values.reduce((sum, value) => sum + value, 0)).toBeCloseTo(expected.sum, 6);
  for (const { utc, value } of expected.spot ?? []) {
    expect(valueAt(point, point.tsUtcSeconds.indexOf(second(utc))), `${point.name} at ${utc}`).toBe(value);
  }
  if (expected.states) expect([...(point.stateNames ?? [])].sort()).toEqual([...expected.states].sort());
  if (expected.missing !== undefined) expect(point.missing).toBe(expected.missing);
  if (expected.intervalSeconds !== undefined) expect(point.intervalSeconds).toBe(expected.intervalSeconds);
}

function expectPoints(reading: TrendReading, expected: readonly ExpectedPoint[]): void {
  expect(reading.points.map((point) => point.name)).toEqual(expected.map((point) => point.name));
  for (const point of expected)
    expectPoint(
      reading.points.find(({ name }) => name === point.name),
      point,
    );
}

function expectFindings(reading: TrendReading, shape: TrendShape): void {
  for (const expected of shape.findings) {
    const match = reading.findings.find((finding) => {
      const facts = finding as unknown as Record<string, unknown>;
      return Object.entries(expected).every(([key, value]) => JSON.stringify(facts[key]) === JSON.stringify(value));
    });
    expect(match, `${JSON.stringify(expected)} among ${JSON.stringify(reading.findings)}`).toBeDefined();
  }
  const codes = reading.findings.map(({ code }) => code as string);
  for (const code of shape.forbidden) expect(codes).not.toContain(code);
  const heldBack = codes.includes("ambiguous-local-time") || codes.includes("nonexistent-local-time");
  const allowed = new Set([...shape.findings.map(({ code }) => code), ...(heldBack ? ["gap"] : [])]);
  const unexpected = reading.findings.filter(({ code, severity }) => severity !== "note" && !allowed.has(code));
  if (shape.outcome !== "refuse") expect(unexpected).toEqual([]);
}

async function checkShape(shape: TrendShape): Promise<void> {
  const reading = await read(shape);
  expect(reading.outcome).toBe(shape.outcome);
  for (const [key, value] of Object.entries(shape.detected ?? {})) {
    expect((reading.detected as Record<string, unknown>)[key], key).toEqual(value);
  }
  if (shape.points) expectPoints(reading, shape.points);
  if (shape.refusal) {
    expect(reading.refusal?.code).toBe(shape.refusal.code);
    if (shape.refusal.lines) expect(reading.refusal?.lines).toEqual(shape.refusal.lines);
    for (const fact of shape.refusal.mustSay)
      expect(reading.refusal?.sentence.toLowerCase()).toContain(fact.toLowerCase());
  } else {
    expect(reading.refusal).toBeNull();
  }
  const asked = reading.ask.map(({ what, choices, proposal, points }) => ({ what, choices, proposal, points }));
  expect(asked).toEqual((shape.ask ?? []).map((ask) => ({ proposal: undefined, points: undefined, ...ask })));
  expectFindings(reading, shape);
  for (const [choice, points] of Object.entries(shape.ifAnswered ?? {})) {
    const answered = await read(shape, answerOf(shape.ask?.[0]?.what ?? "", choice));
    expect(answered.ask).toEqual([]);
    expect(answered.outcome).toMatch(/^accept/);
    expectPoints(answered, points);
  }
}

test("there are 52 shapes, each with something expected of it", () => {
  expect(shapes.map(({ id }) => Number(id))).toEqual(Array.from({ length: 52 }, (_, i) => i + 1));
});

describe("trend export shapes", () => {
  for (const shape of shapes) {
    if (notYetRead.includes(shape.id)) test.fails(`not yet read: ${shape.file}`, () => checkShape(shape));
    else test(`reads ${shape.file}`, () => checkShape(shape));
  }
});

describe("row accounting", () => {
  for (const shape of shapes) {
    test(`every row of ${shape.file} has one fate`, async () => {
      const { rows, rowNotes, points } = await read(shape);
      expect(rows.accepted + rows.repaired + rows.heldBack + rows.rejected + rows.ignored).toBe(rows.rowsInFile);
      if (shape.outcome !== "refuse") expect(rows.rowsInFile).toBeGreaterThan(0);
      for (const note of rowNotes) expect(note.line).toBeGreaterThan(0);
      for (const point of points) {
        for (let i = 1; i < point.tsUtcSeconds.length; i++) {
          expect(point.tsUtcSeconds[i]).toBeGreaterThan(point.tsUtcSeconds[i - 1] as number);
        }
      }
    });
  }
});

test("an inspection says what the reading holds, in plain values", async () => {
  const shape = shapes[0] as TrendShape;
  const inspection = await inspectTrendFile({ fileName: shape.file, bytes: shape.bytes, ...shape.building });
  expect(Object.keys(inspection).sort()).toEqual([
    "ask",
    "detected",
    "file",
    "findings",
    "outcome",
    "points",
    "refusal",
  ]);
  expect(inspection.points[0]).toMatchObject({
    firstUtc: "2026-07-06T12:00:00Z",
    lastUtc: "2026-07-06T13:45:00Z",
    first: 72.4,
    last: 72.5,
  });
  expect(inspection.points[0]?.sum).toBeCloseTo(578.4, 6);
  expect(JSON.parse(JSON.stringify(inspection))).toEqual(inspection);
});
