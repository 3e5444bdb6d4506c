import { describe, expect, test } from "vitest";
import { RegularStamps } from "@/lib/importers/trend-csv/regular-stamps";
import { scanLong, scanSwept } from "@/lib/importers/trend-csv/scan-long";
import { Scratch } from "@/lib/importers/trend-csv/scratch";
import { zoneWords } from "@/lib/importers/trend-csv/zone-words";
import { zoneTable } from "@/lib/time/zone-table";

const ZONE = "America/Chicago";
const COMMA = 44;
const DOT = 46;

function tableOf(lines: readonly string[]) {
  const bytes = Buffer.from(lines.map((line) => `${line}\n`).join(""));
  const stamps = new RegularStamps(bytes, {
    form: "ymd- 24 h",
    order: "mdy",
    zone: zoneTable(ZONE),
    words: zoneWords(ZONE),
    clock: undefined,
    saysUtc: false,
  });
  const columns = { stamp: 0, name: 1, value: 2, unit: null, status: null, width: 3 };
  return { bytes, columns, mark: COMMA, decimal: DOT, stamps, firstLine: 2 };
}

const at = (minute: number, point: string, value: string) =>
  `2026-07-06 08:${String(minute).padStart(2, "0")},${point},${value}`;
const NINE = [0, 15, 30].flatMap((minute) =>
  ["A", "B", "C"].map((point, k) => at(minute, `VAV-2-14 ${point}`, `${minute + k}.5`)),
);
const lengthOf = (rows: number) =>
  Buffer.byteLength(
    NINE.slice(0, rows)
      .map((line) => `${line}\n`)
      .join(""),
  );

function swept(lines: readonly string[], isLast: boolean, points = 3) {
  const table = tableOf(lines);
  const scan = scanSwept(table, points, isLast, new Scratch());
  if (!scan) return null;
  const { taken, end, isPlain, utc, values, sweeps, names } = scan;
  const byPoint = names.map((_, k) => [...values.subarray(k * sweeps, k * sweeps + utc.length)]);
  return { taken, end, isPlain, instants: utc.length, byPoint };
}

describe("a long table whose points come together", () => {
  test("is laid out by point and instant, to the end of the file", () => {
    expect(swept(NINE, true)).toEqual({
      taken: 9,
      end: lengthOf(9),
      isPlain: true,
      instants: 3,
      byPoint: [
        [0.5, 15.5, 30.5],
        [1.5, 16.5, 31.5],
        [2.5, 17.5, 32.5],
      ],
    });
  });

  test("keeps back the last instant, which may go on behind the bytes", () => {
    expect(swept(NINE.slice(0, 8), false)).toMatchObject({ taken: 6, end: lengthOf(6), isPlain: true, instants: 2 });
  });

  test("leaves out what a point has not", () => {
    const rows = NINE.filter((_, i) => i !== 4);
    expect(swept(rows, true)?.byPoint).toEqual([
      [0.5, 15.5, 30.5],
      [1.5, Number.NaN, 31.5],
      [2.5, 17.5, 32.5],
    ]);
  });

  test.each([
    ["a second value at an instant", at(15, "VAV-2-14 A", "70.0")],
    ["a point that is new", at(15, "VAV-2-15 A", "70.0")],
    ["a value that is no number", at(15, "VAV-2-14 C", "No data")],
    ["an instant that was there", at(0, "VAV-2-14 C", "70.0")],
  ])("stops before the instant with %s", (_, odd) => {
    const isEarlier = odd.startsWith(at(0, "", "").slice(0, 16));
    const scan = swept([...NINE.slice(0, 5), odd, ...NINE.slice(6)], true);
    expect(scan).toMatchObject(
      isEarlier ? { taken: 5, instants: 2, isPlain: false } : { taken: 3, instants: 1, isPlain: false },
    );
  });

  test("stops where there is no more room, with plain rows to follow", () => {
    // 16 instants of 63 bytes; six points are known of the file, three of which have values: room for 14 instants.
    const rows = Array.from({ length: 16 }, (_, minute) => ["A", "B", "C"].map((k) => at(minute, k, "1"))).flat();
    expect(swept(rows, true, 6)).toMatchObject({ taken: 42, end: 42 * 21, instants: 14, isPlain: true });
  });
});

describe("a long table in any order", () => {
  const BY_POINT = ["A", "B", "C"].flatMap((point) => [0, 15, 30].map((minute) => at(minute, point, "71.5")));

  test("is not laid out by instant", () => expect(swept(BY_POINT, true)).toBeNull());

  test("is read row by row, up to the first that is not plain", () => {
    const scan = scanLong(tableOf([...BY_POINT, at(45, "C", "down")]), new Scratch());
    expect([scan.taken, scan.names, [...scan.point.subarray(0, scan.taken)]]).toEqual([
      9,
      ["A", "B", "C"],
      [0, 0, 0, 1, 1, 1, 2, 2, 2],
    ]);
  });
});
