import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import type { TrendReading } from "@/lib/importers/trend-csv/trend-file";

// Plain rows are read straight from their bytes, all others the long way: a file must come out the same by either way.
// Read whole, every row goes the long way; read in small parts, plain stretches take the short one.

/** As text: a difference of thousands of numbers is nothing to print. */
const textOf = (reading: TrendReading): string => JSON.stringify(plain(reading));
const plain = ({ facts: _facts, points, ...rest }: TrendReading) => ({
  ...rest,
  points: points.map(({ tsUtcSeconds, values, ...point }) => ({
    ...point,
    ts: [...tsUtcSeconds],
    values: [...values],
  })),
});

async function expectSame(text: string, timeZone = "America/New_York"): Promise<TrendReading> {
  const input = { fileName: "office.csv", bytes: new TextEncoder().encode(text), timeZone };
  const whole = await readTrendFile(input);
  const { rows } = whole;
  expect(rows.accepted + rows.repaired + rows.heldBack + rows.rejected + rows.ignored).toBe(rows.rowsInFile);
  for (const blockBytes of [1500, 4000])
    expect(textOf(await readTrendFile({ ...input, blockBytes })) === textOf(whole), text).toBe(true);
  return whole;
}

const pad = (value: number): string => String(value).padStart(2, "0");
type Form = (at: Date) => string;
const FORMS: Record<string, Form> = {
  "year first": (at) =>
    `${at.getUTCFullYear()}-${pad(at.getUTCMonth() + 1)}-${pad(at.getUTCDate())} ${pad(at.getUTCHours())}:${pad(at.getUTCMinutes())}`,
  "month first, twelve hours": (at) =>
    `${at.getUTCMonth() + 1}/${at.getUTCDate()}/${at.getUTCFullYear()} ${at.getUTCHours() % 12 || 12}:${pad(at.getUTCMinutes())}:00 ${at.getUTCHours() < 12 ? "AM" : "PM"}`,
  "with its offset": (at) => `${at.toISOString().slice(0, 19)}-05:00`,
};

/** Cells now and then: mostly numbers, some of which are none. */
const cell = fc.oneof(
  { weight: 40, arbitrary: fc.integer({ min: 680, max: 760 }).map((tenths) => (tenths / 10).toFixed(1)) },
  { weight: 4, arbitrary: fc.constant("") },
  {
    weight: 1,
    arbitrary: fc.constantFrom("No data", "-999", "72.4 °F", "999", '"71.9"', "{down}", "-0.0", " 72", "1e1"),
  },
);
const state = fc.constantFrom("0", "1");
/** Words about a reading, mostly that all is well; a comma in braces parts no fields. */
const status = fc.oneof(
  { weight: 40, arbitrary: fc.constantFrom("{ok}", "{ok}", "{ok}", "ok", "") },
  {
    weight: 1,
    arbitrary: fc.constantFrom("{alarm}", "{down}", "{ok,stale}", "{unacked,alarm}", '"{ok}"'),
  },
);
/** Fields as a system writes them that puts quotes about all of them, or about none. */
const rowOf = (cells: readonly string[], isQuoted: boolean): string =>
  cells.map((text) => (isQuoted && !text.startsWith('"') ? `"${text}"` : text)).join(",");

describe("a wide table", () => {
  for (const [name, form] of Object.entries(FORMS)) {
    test(`reads the same by either way, stamps ${name}`, async () => {
      const row = fc.tuple(cell, cell, state, fc.boolean());
      await fc.assert(
        fc.asyncProperty(
          fc.array(row, { minLength: 120, maxLength: 220 }),
          fc.constantFrom(Date.UTC(2026, 2, 6, 20), Date.UTC(2026, 9, 30, 20), Date.UTC(2026, 6, 6, 8)),
          async (rows, start) => {
            const lines = rows.map(([a, b, c, late], i) =>
              [form(new Date(start + i * 900_000 + (late ? 0 : 0))), a, b, c].join(","),
            );
            await expectSame(`Time,Zone 1 temp (°F),Zone 2 temp (°F),Zone 1 occupied\n${lines.join("\n")}\n`);
          },
        ),
        { numRuns: 25, endOnFailure: true },
      );
    });
  }

  test("reads the same by either way, with quotes about its fields and statuses beside them", async () => {
    const row = fc.tuple(cell, status, cell, status, fc.constantFrom("9", "9", "9", "8"));
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { minLength: 120, maxLength: 220 }),
        fc.boolean(),
        fc.integer({ min: 0, max: 220 }),
        async (rows, isQuoted, odd) => {
          const stamp = FORMS["year first"] as Form;
          const lines = rows.map((cells, i) =>
            // One row has its quotes otherwise than the rest.
            rowOf([stamp(new Date(Date.UTC(2026, 6, 6) + i * 900_000)), ...cells], isQuoted !== (i === odd)),
          );
          const headings = ["Time", "Zone 1 temp (°F)", "Status", "Zone 2 temp (°F)", "Status", "Samples"];
          await expectSame([rowOf(headings, isQuoted), ...lines, ""].join("\n"));
        },
      ),
      { numRuns: 40, endOnFailure: true },
    );
  });

  test("is told from one whose rows run backwards, repeat or break off", async () => {
    const stamp = FORMS["year first"] as Form;
    const rows = Array.from(
      { length: 200 },
      (_, i) => `${stamp(new Date(Date.UTC(2026, 6, 6) + i * 900_000))},72.${i % 10}`,
    );
    const heading = "Time,Zone 1 temp (°F)";
    await expectSame([heading, ...rows].join("\n"));
    await expectSame([heading, ...rows.toReversed(), ""].join("\n"));
    const twice = [...rows.slice(0, 150), rows[149], ...rows.slice(150)];
    await expectSame([heading, ...twice, "Average,72.4", ""].join("\n"));
    const cut = await expectSame([heading, ...rows, "2026-07-08 02:00"].join("\r\n"));
    expect(cut.rows).toMatchObject({ rowsInFile: 201, accepted: 200 });
  });
});

describe("a long table", () => {
  test("reads the same by either way, sorted by time or by point, with units and statuses and quotes and without", async () => {
    const unit = fc.oneof(
      { weight: 30, arbitrary: fc.constant("°F") },
      { weight: 1, arbitrary: fc.constantFrom("°C", " °F") },
    );
    const name = fc.oneof(
      { weight: 60, arbitrary: fc.constant("VAV-2") },
      { weight: 1, arbitrary: fc.constantFrom("VAV-2 ", '"VAV-2"', '"VAV, 2"', "VAV {2", 'VAV "2"') },
    );
    const reading = fc.tuple(cell, unit, status, name);
    await fc.assert(
      fc.asyncProperty(
        fc.array(reading, { minLength: 150, maxLength: 260 }),
        fc.boolean(),
        fc.constantFrom([], ["Unit"], ["Unit", "Status"], ["Status"]),
        fc.boolean(),
        async (readings, byPoint, more, isQuoted) => {
          const stamp = FORMS["year first"] as Form;
          const per = Math.ceil(readings.length / 3);
          const lines = readings.map(([value, unit, status, name], i) => {
            const [point, step] = byPoint ? [Math.floor(i / per), i % per] : [i % 3, Math.floor(i / 3)];
            const at = stamp(new Date(Date.UTC(2026, 6, 6, 8) + step * 900_000));
            const own = name.replace("2", `2-${point + 1}`);
            const behind = more.map((column) => (column === "Unit" ? unit : status));
            return rowOf([at, own, value, ...behind], isQuoted);
          });
          await expectSame([rowOf(["Time", "Point", "Value", ...more], isQuoted), ...lines, ""].join("\n"));
        },
      ),
      { numRuns: 80, endOnFailure: true },
    );
  });
});
