import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import type { Rows } from "@/lib/importers/trend-csv/rows";
import { splitRows } from "@/lib/importers/trend-csv/split-rows";

const cellsOf = (rows: Rows): string[][] => Array.from({ length: rows.count }, (_, row) => rows.cellsOf(row));

describe("rows and fields", () => {
  test("agree with papaparse on any table, however it is quoted", () => {
    const field = fc.string({ unit: fc.constantFrom("a", "7", ".", " ", '"', ",", ";", "\n", "°"), maxLength: 8 });
    const table = fc.array(fc.array(field, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(table, fc.constantFrom(",", ";", "\t"), fc.boolean(), (rows, delimiter, quotes) => {
        const text = Papa.unparse(rows, { delimiter, quotes, newline: "\r\n" });
        expect(cellsOf(splitRows(text, delimiter))).toEqual(Papa.parse(text, { delimiter, newline: "\r\n" }).data);
      }),
    );
  });

  test("keeps the physical line of each row past a heading that holds a line end", () => {
    const rows = splitRows('Time,"Zone 1\nTemp"\n1,2\n\n3,4\n', ",");
    expect(cellsOf(rows)).toEqual([["Time", "Zone 1\nTemp"], ["1", "2"], [""], ["3", "4"]]);
    expect([...rows.lines.subarray(0, rows.count)]).toEqual([1, 3, 4, 5]);
  });

  test("a quote that is never closed spoils its own line only", () => {
    const rows = splitRows('a,b\n1,"2\n3,4\n', ",");
    expect(cellsOf(rows)).toEqual([
      ["a", "b"],
      ["1", '"2'],
      ["3", "4"],
    ]);
    expect([...rows.malformed]).toEqual([1]);
  });

  test("status words in braces stay one field", () => {
    expect(cellsOf(splitRows("8:00,72.3,{alarm,unacknowledged}\n", ","))).toEqual([
      ["8:00", "72.3", "{alarm,unacknowledged}"],
    ]);
  });
});
