import { describe, expect, test } from "vitest";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import type { TrendAnswers, TrendReading } from "@/lib/importers/trend-csv/trend-file";

/** Files that combine shapes, or nearly have one: none of them may go wrong in silence. */
async function read(text: string, answers?: TrendAnswers, timeZone = "America/New_York"): Promise<TrendReading> {
  const reading = await readTrendFile({
    fileName: "VAV-4_ZN-T.csv",
    bytes: new TextEncoder().encode(text),
    timeZone,
    answers,
  });
  const { rows } = reading;
  expect(rows.accepted + rows.repaired + rows.heldBack + rows.rejected + rows.ignored).toBe(rows.rowsInFile);
  return reading;
}
const codes = (reading: TrendReading): string[] => reading.findings.map(({ code }) => code);
const stampAt = (i: number): string =>
  `2026-07-06 ${String(i >> 2).padStart(2, "0")}:${String(15 * (i % 4)).padStart(2, "0")}`;
const iso = (seconds: number | undefined): string => new Date((seconds ?? Number.NaN) * 1000).toISOString();

describe("files that must not go wrong in silence", () => {
  test("plain text that is no table is refused", async () => {
    const { refusal } = await read("Dear all,\nthe chiller is down today, please be patient.\nThe facilities team\n");
    expect(refusal?.code).toBe("not-a-trend-export");
  });

  test("a table that begins far down the file is found, and its names in the legend before it", async () => {
    const points = Array.from({ length: 700 }, (_, k) => `c${k}`);
    const legend = points.map((code, k) => `"${code}","VAV-3-${k} ZN-T, the air of the zone","deg F"`);
    const rows = Array.from({ length: 40 }, (_, i) => [stampAt(i), ...points.map((_, k) => 70 + ((i + k) % 9) / 10)]);
    const table = [["Time", ...points], ...rows].map((row) => row.join(","));
    const reading = await read([...legend, "", ...table].join("\n"));
    expect(reading.outcome).toBe("accept");
    expect(reading.points).toHaveLength(700);
    expect(reading.points[0]).toMatchObject({ name: expect.stringContaining("VAV-3-0 ZN-T"), unit: "degF" });
    expect(reading.rows.accepted).toBe(40);

    const notes = Array.from({ length: 9_000 }, (_, k) => `note ${k}, of the day before`);
    const far = await read([...notes, "Time,ZN-T (°F)", ...rows.map((_, i) => `${stampAt(i)},71.5`)].join("\n"));
    expect(far.rows).toMatchObject({ accepted: 40 });
  });

  test("an empty file, JSON, a PDF and zero bytes are refused by name", async () => {
    expect((await read("")).refusal?.code).toBe("empty-file");
    expect((await read('{"points": []}')).refusal?.code).toBe("not-a-trend-export");
    expect((await read("%PDF-1.7 ...")).refusal?.sentence).toContain("PDF");
    expect((await read("Time,ZN-T\n\u0000\u0000\u0000\u0000,1")).refusal?.code).toBe("not-text");
  });

  test("unquoted decimal commas in a comma-separated file are refused, not shifted into the next column", async () => {
    const { refusal } = await read(
      "Time,A temp (°C),B temp (°C)\n2026-07-06 08:00,22,4,23,1\n2026-07-06 08:15,22,5,23,0\n",
    );
    expect(refusal?.code).toBe("columns-do-not-match");
  });

  test("one row with a field too many is rejected by its line, the rest stands", async () => {
    const reading = await read(
      "Time,Rm 1 temp (°C)\n2026-07-06 08:00,22.4\n2026-07-06 08:15,22,5\n2026-07-06 08:30,22.6\n",
    );
    expect(reading.findings).toContainEqual(expect.objectContaining({ code: "row-unreadable", count: 1, lines: [3] }));
    expect(reading.rows).toMatchObject({ rowsInFile: 3, accepted: 2, rejected: 1 });
    expect(reading.rowNotes).toContainEqual({
      line: 3,
      fate: "rejected",
      code: "row-unreadable",
      excerpt: "2026-07-06 08:15,22,5",
    });
  });

  test("month first on some rows and day first on others is refused with the lines", async () => {
    const { refusal } = await read("Time,ZN-T (°F)\n7/13/2026 8:00,72\n7/14/2026 8:00,72\n15/7/2026 8:00,73\n");
    expect(refusal).toMatchObject({ code: "mixed-date-formats", lines: [2, 4] });
  });

  test("seconds since a start of the size of spreadsheet dates are asked about; dates as spreadsheets count them are read", async () => {
    const logOf = (numbers: number[]): string => ["time,ZN-T (°F)", ...numbers.map((n) => `${n},71.5`)].join("\n");
    const sixteen = Array.from({ length: 16 }, (_, i) => i);
    expect((await read(logOf(sixteen.map((i) => 43_200 + 60 * i)))).ask).toMatchObject([{ what: "time-start" }]);
    const daily = await read(logOf(sixteen.map((i) => 46_209 + i)));
    expect(iso(daily.points[0]?.tsUtcSeconds[0])).toBe("2026-07-06T04:00:00.000Z");
  });

  test("times without dates are refused", async () => {
    expect((await read("Time,ZN-T (°F)\n08:00,72.4\n08:15,72.1\n")).refusal?.code).toBe("no-dates");
    expect((await read("Time,ZN-T (°F)\n00:00.0,72.4\n15:00.0,72.1\n30:00.0,72\n45:00.0,72\n")).refusal?.code).toBe(
      "dates-destroyed",
    );
  });

  test("the midnight that an export leaves off is read, a date cut off elsewhere is not", async () => {
    const kept = await read("Time,ZN-T (°F)\n2026-07-06 23:45,72\n2026-07-07,71\n2026-07-07 00:15,70\n");
    expect(kept.rows).toMatchObject({ accepted: 3 });
    expect(iso(kept.points[0]?.tsUtcSeconds[1])).toBe("2026-07-07T04:00:00.000Z");
    const cut = await read("Time,ZN-T (°F)\n2026-07-07 08:00,72\n2026-07-07,71\n2026-07-07 08:30,70\n");
    expect(cut.rows).toMatchObject({ accepted: 2, rejected: 1 });
  });

  test("an unknown numeric flag is asked about, and the answer decides", async () => {
    const text = "Time,Flag,Rm 1 temp (°C)\n2026-07-06 08:00,0,22.4\n2026-07-06 08:15,1,0.0\n2026-07-06 08:30,0,22.6\n";
    const asked = await read(text);
    expect(asked.ask).toMatchObject([{ what: "flag-column", choices: ["0", "1"], column: "Flag" }]);
    const answered = await read(text, { flagColumn: { good: ["0"] } });
    expect([...(answered.points[0]?.values ?? [])]).toEqual([22.4, 22.6]);
  });

  test("newest first through the repeated hour: the upper pass is standard time", async () => {
    const text =
      "Time,ZN-T (°F)\n2026-11-01 02:00,5\n2026-11-01 01:30,54\n2026-11-01 01:00,53\n2026-11-01 01:30,52\n2026-11-01 01:00,51\n2026-11-01 00:30,50\n";
    const { points, findings } = await read(text);
    expect(iso(points[0]?.tsUtcSeconds[1])).toBe("2026-11-01T05:00:00.000Z");
    expect([...(points[0]?.values ?? [])]).toEqual([50, 51, 52, 53, 54, 5]);
    expect(findings).toContainEqual(expect.objectContaining({ code: "repeated-hour-resolved", count: 4 }));
  });

  test("a long table tells the repeated hour apart for each point by itself", async () => {
    const rows = ["00:30", "01:00", "01:30", "01:00", "01:30", "02:00"].flatMap((time, i) => [
      `2026-11-01 ${time},A ZN-T,${70 + i},°F`,
      ...(i === 3 ? [] : [`2026-11-01 ${time},B ZN-T,${60 + i},°F`]),
    ]);
    const reading = await read(`Time,Point,Value,Unit\n${rows.join("\n")}\n`);
    expect(reading.points.map((point) => [point.name, point.tsUtcSeconds.length])).toEqual([
      ["A ZN-T", 6],
      ["B ZN-T", 4],
    ]);
    expect(reading.findings).toContainEqual(expect.objectContaining({ code: "ambiguous-local-time", count: 1 }));
  });

  test("a true zero is a reading, also under a status that is good", async () => {
    const { points, outcome } = await read(
      "Time,VAV-1 flow (cfm)\n2026-07-06 08:00,0\n2026-07-06 08:15,0.0\n2026-07-06 08:30,310\n",
    );
    expect(outcome).toBe("accept");
    expect([...(points[0]?.values ?? [])]).toEqual([0, 0, 310]);
  });

  test("9999 among a meter's readings is a reading, among temperatures it is not", async () => {
    const meter = await read(
      "Time,Main meter (kWh)\n2026-07-06 08:00,9998\n2026-07-06 09:00,9999\n2026-07-06 10:00,10001\n",
    );
    expect(meter.points[0]?.values.length).toBe(3);
    const temp = await read("Time,ZN-T (°F)\n2026-07-06 08:00,72\n2026-07-06 09:00,9999\n2026-07-06 10:00,71\n");
    expect(codes(temp)).toContain("sentinel-value");
  });

  test("hot water at 190 °F is not called implausible", async () => {
    const reading = await read(
      "Time,HWS temp (°F)\n2026-07-06 08:00,190\n2026-07-06 09:00,188\n2026-07-06 10:00,189\n",
    );
    expect(reading.outcome).toBe("accept");
  });

  test("tables of the same point one after another are one point, side by side in time they are two", async () => {
    const page = (day: string, value: number): string =>
      `Point,ZN-T\nUnits,°F\nTime,Value\n2026-07-${day} 08:00,${value}\n2026-07-${day} 08:15,${value}\n2026-07-${day} 08:30,${value}\n\n`;
    const pages = await read(page("06", 72) + page("07", 73));
    expect(pages.points.map(({ name, values }) => [name, values.length])).toEqual([["ZN-T", 6]]);
    const zones = await read(page("06", 72) + page("06", 68));
    expect(zones.points.map(({ name }) => name)).toEqual(["ZN-T", "ZN-T (table 2)"]);
    expect(codes(zones)).toContain("repeated-name");
  });

  test("a unit answer for one point goes before the answer for all", async () => {
    const text = "Time,A ZN-T,B ZN-T\n2026-07-06 08:00,72,22\n2026-07-06 08:15,72,22\n";
    const { points, ask } = await read(text, { unit: "degF", units: { "B ZN-T": "degC" } });
    expect(ask).toEqual([]);
    expect(points.map(({ unit }) => unit)).toEqual(["degF", "degC"]);
  });

  test("the building's locale only proposes an order, it decides none", async () => {
    const bytes = new TextEncoder().encode("Time,ZN-T (°F)\n03/04/2026 08:00,72\n03/04/2026 08:15,72\n");
    const reading = await readTrendFile({ fileName: "a.csv", bytes, timeZone: "America/New_York", locale: "en-US" });
    expect(reading.outcome).toBe("ask");
    expect(reading.ask).toMatchObject([{ what: "date-order", proposal: "mdy" }]);
  });

  test("a time zone that is none is a mistake of the caller", async () => {
    await expect(read("Time,A\n", {}, "Nowhere/City")).rejects.toThrow(RangeError);
  });
});
