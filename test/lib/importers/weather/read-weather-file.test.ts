import { describe, expect, it } from "vitest";
import { weatherFindingText } from "@/lib/importers/weather/findings";
import { readWeatherFile } from "@/lib/importers/weather/read-weather-file";
import type { WeatherRefusal, WeatherYear } from "@/lib/importers/weather/weather-file";
import { hourName } from "@/lib/importers/weather/year-hours";
import { bytesOf, dryBulbAt, EPW_HEADER, epwText, type MadeRow, tmy3Text, wholeYear } from "./weather-text";

const read = (text: string, fileName = "year.epw") => readWeatherFile({ fileName, bytes: bytesOf(text) });

function accepted(text: string): WeatherYear {
  const result = read(text);
  if (result.status !== "ok") throw new Error(result.message);
  return result;
}

function refused(text: string): WeatherRefusal {
  const result = read(text);
  if (result.status !== "refused") throw new Error("expected a refusal");
  return result;
}

const setDryBulb = (rows: MadeRow[], from: number, count: number, dryBulb: string): MadeRow[] =>
  rows.map((row, at) => (at >= from && at < from + count ? { ...row, dryBulb } : row));

describe("a whole year", () => {
  it("starts with the hour ending 01:00 on 1 January and ends with 24:00 on 31 December", () => {
    for (const text of [epwText(wholeYear()), tmy3Text(wholeYear())]) {
      const { dryBulbC } = accepted(text);
      expect(dryBulbC).toHaveLength(8760);
      expect(dryBulbC[0]).toBeCloseTo(dryBulbAt({ month: 1, hour: 1 }), 9);
      expect(dryBulbC[23]).toBeCloseTo(dryBulbAt({ month: 1, hour: 24 }), 9);
      expect(dryBulbC[59 * 24]).toBeCloseTo(dryBulbAt({ month: 3, hour: 1 }), 9);
      expect(dryBulbC[8759]).toBeCloseTo(dryBulbAt({ month: 12, hour: 24 }), 9);
    }
  });

  it("is placed by month, day and hour when each month comes from another year", () => {
    const rows = wholeYear().map((row) => ({ ...row, year: 2000 - row.month }));
    const year = accepted(tmy3Text(rows));
    expect(year.dryBulbC[0]).toBeCloseTo(dryBulbAt({ month: 1, hour: 1 }), 9);
    expect(year.dryBulbC[8759]).toBeCloseTo(dryBulbAt({ month: 12, hour: 24 }), 9);
    expect(year.findings.map((finding) => finding.code)).toEqual(["months-from-different-years"]);
    expect(year.station).toBe("ELM FIELD, NORTH, XX");
  });

  it("is put in calendar order when it starts in July, and says so", () => {
    const rows = wholeYear();
    const year = accepted(epwText([...rows.slice(4344), ...rows.slice(0, 4344)]));
    expect(year.dryBulbC[0]).toBeCloseTo(dryBulbAt({ month: 1, hour: 1 }), 9);
    expect(year.findings).toEqual([
      { code: "rows-not-in-calendar-order", severity: "note", evidence: { firstLine: 9 + 4416 } },
    ]);
  });

  it("loses 29 February of a leap file with 8,784 rows, with a finding", () => {
    const rows = wholeYear(2020);
    expect(rows).toHaveLength(8784);
    const year = accepted(epwText(rows));
    expect(year.dryBulbC[59 * 24]).toBeCloseTo(dryBulbAt({ month: 3, hour: 1 }), 9);
    const [finding] = year.findings;
    expect(finding?.code).toBe("leap-day-dropped");
    expect(finding?.evidence).toEqual({ rows: 24, firstLine: 9 + 59 * 24 });
    expect(finding && weatherFindingText(finding)).toContain("24 rows from line 1425");
  });

  it("takes minute 60 for the same hour as minute 0", () => {
    const year = accepted(epwText(wholeYear()).replaceAll(",0,?9", ",60,?9"));
    expect(year.dryBulbC[0]).toBeCloseTo(dryBulbAt({ month: 1, hour: 1 }), 9);
  });
});

describe("missing values", () => {
  it("are filled on a straight line when at most 6 h long, with a finding that names the lines", () => {
    const rows = setDryBulb(wholeYear(), 2, 6, "99.9");
    rows[1] = { ...(rows[1] as MadeRow), dryBulb: "10" };
    rows[8] = { ...(rows[8] as MadeRow), dryBulb: "17" };
    const year = accepted(epwText(rows));
    expect([...year.dryBulbC.subarray(1, 9)]).toEqual([10, 11, 12, 13, 14, 15, 16, 17]);
    expect(year.findings).toEqual([
      {
        code: "missing-values-filled",
        severity: "caution",
        evidence: { hours: 6, gaps: 1, longestGapHours: 6, lines: [11] },
      },
    ]);
  });

  it("are filled across the turn of the year", () => {
    const rows = setDryBulb(setDryBulb(wholeYear(), 0, 1, ""), 8759, 1, "99.9");
    rows[8758] = { ...(rows[8758] as MadeRow), dryBulb: "4" };
    rows[1] = { ...(rows[1] as MadeRow), dryBulb: "1" };
    const { dryBulbC } = accepted(epwText(rows));
    expect(dryBulbC[8759]).toBeCloseTo(3, 9);
    expect(dryBulbC[0]).toBeCloseTo(2, 9);
  });

  it("of 7 h in a row refuse the file and name the first hour and its line", () => {
    const refusal = refused(epwText(setDryBulb(wholeYear(), 30, 7, "99.9")));
    expect(refusal.code).toBe("values-missing");
    expect(refusal.message).toContain("7 hours in a row");
    expect(refusal.message).toContain("2 January, hour ending 07:00 (line 39)");
    expect(refusal.lines).toEqual([39]);
  });

  it("are what a TMY3 file writes as -9900", () => {
    const year = accepted(tmy3Text(setDryBulb(wholeYear(), 100, 2, "-9900")));
    expect(year.findings[0]?.evidence).toMatchObject({ hours: 2, lines: [103] });
  });

  it("include values outside the format's limits, which are named", () => {
    const year = accepted(epwText(setDryBulb(wholeYear(), 100, 1, "-75.5")));
    expect(year.findings.map((finding) => finding.code)).toEqual(["missing-values-filled", "values-out-of-range"]);
    expect(year.findings[1]?.evidence).toEqual({ count: 1, lines: [109], values: [-75.5] });
  });

  it("refuse a file in °F, whose summer lies above 70", () => {
    const refusal = refused(epwText(setDryBulb(wholeYear(), 4000, 500, "85.0")));
    expect(refusal.code).toBe("values-missing");
    expect(refusal.message).toContain("500 values lie outside -70 to 70 °C (85 in line 4009)");
  });
});

describe("refusals", () => {
  it("name the missing hours and their number", () => {
    const rows = wholeYear().filter((row) => !(row.month === 5 && row.day === 7 && row.hour >= 3 && row.hour <= 9));
    const refusal = refused(epwText(rows));
    expect(refusal.code).toBe("hours-missing");
    expect(refusal.message).toContain("7 hours are missing of the 8760 of a year (the file has 8753 rows)");
    expect(refusal.message).toContain("7 May, hour ending 03:00; 7 May, hour ending 04:00");
    expect(refusal.message).toContain("and 2 more");
  });

  it("say that a file follows daylight saving time when one hour is missing and another stands twice", () => {
    const rows = wholeYear().filter((row) => !(row.month === 3 && row.day === 10 && row.hour === 3));
    const at = rows.findIndex((row) => row.month === 11 && row.day === 3 && row.hour === 2);
    rows.splice(at, 0, rows[at] as MadeRow);
    const refusal = refused(epwText(rows));
    expect(refusal.message).toContain("10 March, hour ending 03:00");
    expect(refusal.message).toContain("daylight saving time");
  });

  it("name both lines of an hour that stands twice", () => {
    const rows = wholeYear();
    rows.splice(5, 0, rows[4] as MadeRow);
    const refusal = refused(epwText(rows));
    expect(refusal.code).toBe("hour-twice");
    expect(refusal.lines).toEqual([13, 14]);
    expect(refusal.message).toContain("1 January, hour ending 05:00 stands twice, in lines 13 and 14");
  });

  it.each([
    ["hour 0", (text: string) => text.replace("2019,1,1,1,0,", "2019,1,1,0,0,"), "bad-row", [9]],
    ["31 April", (text: string) => text.replace("2019,4,30,1,0,", "2019,4,31,1,0,"), "bad-row", [2865]],
    ["words for a value", (text: string) => text.replace("?9,1.1,", "?9,mild,"), "bad-row", [9]],
    [
      "a row cut off",
      (text: string) => `${text.slice(0, text.indexOf("2019,12,31,24"))}2019,12,31,24,0`,
      "bad-row",
      [8768],
    ],
    ["half-hourly rows", (text: string) => text.replace("DATA PERIODS,1,1", "DATA PERIODS,1,2"), "not-hourly", [8]],
    ["two data periods", (text: string) => text.replace("DATA PERIODS,1,1", "DATA PERIODS,2,1"), "bad-header", [8]],
    ["a blank latitude", (text: string) => text.replace("41.98", ""), "bad-header", [1]],
    ["no data periods line", (text: string) => text.replace("DATA PERIODS", "DATA"), "bad-header", [1]],
  ] as const)("are given for %s, with the line", (_, change, code, lines) => {
    const refusal = refused(change(epwText(wholeYear())));
    expect(refusal.code).toBe(code);
    expect(refusal.lines).toEqual(lines);
  });

  it("say what a file must be when it is something else", () => {
    const refusal = refused("time,zone air\n2024-01-01 00:00,22.1\n");
    expect(refusal.code).toBe("unknown-format");
    expect(refusal.message).toContain("LOCATION");
    const zip = readWeatherFile({ fileName: "year.zip", bytes: Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0) });
    expect(zip).toMatchObject({ status: "refused", code: "not-text" });
  });
});

describe("header", () => {
  it("may lack lines that are not needed, and daylight saving dates change nothing", () => {
    const header = EPW_HEADER.filter((line) => !line.startsWith("COMMENTS 2")).map((line) =>
      line.startsWith("HOLIDAYS") ? "HOLIDAYS/DAYLIGHT SAVINGS,No,3/10,11/3,0" : line,
    );
    const year = accepted(epwText(wholeYear(), header));
    expect(year.findings.map((finding) => finding.code)).toEqual(["header-line-missing", "daylight-saving-in-header"]);
    expect(year.dryBulbC[5000]).toBeGreaterThan(0);
  });

  it("with a clock far from its longitude gets a caution", () => {
    const year = accepted(epwText(wholeYear()).replace("-87.92,-6.0", "-87.92,6.0"));
    expect(year.findings[0]).toMatchObject({ code: "offset-far-from-longitude", severity: "caution" });
    const [finding] = year.findings;
    expect(finding && weatherFindingText(finding)).toContain("suggests about -5.9 h");
  });
});

describe("hourName", () => {
  it("names the ends of the year and the day after February", () => {
    expect([hourName(0), hourName(59 * 24), hourName(8759)]).toEqual([
      "1 January, hour ending 01:00",
      "1 March, hour ending 01:00",
      "31 December, hour ending 24:00",
    ]);
  });
});
