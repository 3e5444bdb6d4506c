import Papa from "papaparse";
import { readDryBulb } from "./dry-bulb";
import { readStation } from "./station";
import { refuse, type WeatherRefusal, type WeatherRow, type WeatherRows } from "./weather-file";

const STAMP = /^(\d{1,2})\/(\d{1,2})\/(\d{4}),(\d{1,2}):(\d{2}),/;

/**
 * Rows of a TMY3 CSV file: station line, heading line, then `MM/DD/YYYY,HH:MM,...` with hours 01:00-24:00, each named
 * by its end, in local standard time. 24:00 belongs to the date on its row.
 */
export function parseTmy3(lines: readonly string[]): WeatherRows {
  const place = cells(lines[0] ?? "");
  const read = readStation({
    nameParts: place.slice(1, 3),
    utcOffset: place[3] ?? "",
    latitude: place[4] ?? "",
    longitude: place[5] ?? "",
  });
  if (read.status !== "ok") return read;
  const dryBulbAt = dryBulbColumn(cells(lines[1] ?? ""));
  if (typeof dryBulbAt !== "number") return dryBulbAt;

  const rows: WeatherRow[] = [];
  for (let at = 2; at < lines.length; at++) {
    const text = lines[at] ?? "";
    if (text.trim() === "") continue;
    const row = parseRow(text, at + 1, dryBulbAt);
    if ("status" in row) return row;
    rows.push(row);
  }
  return { status: "ok", station: read.station, rows, findings: read.findings };
}

const cells = (line: string): string[] => Papa.parse<string[]>(line, { delimiter: "," }).data[0] ?? [];

function dryBulbColumn(headings: readonly string[]): number | WeatherRefusal {
  const at = headings.findIndex((heading) => /^dry-?\s?bulb\s*\(/i.test(heading.trim()));
  if (at < 0) {
    return refuse(
      "bad-header",
      'The heading line has no column "Dry-bulb (C)", from which the outdoor air temperature is read.',
      [2],
    );
  }
  const heading = headings[at] ?? "";
  if (/\(\s*°?\s*C\s*\)/i.test(heading)) return at;
  return refuse("bad-header", `The heading "${heading}" is not in °C; a TMY3 file gives "Dry-bulb (C)".`, [2]);
}

function parseRow(text: string, line: number, dryBulbAt: number): WeatherRow | WeatherRefusal {
  const stamp = STAMP.exec(text);
  if (!stamp) {
    return refuse("bad-row", `Line ${line} does not begin with a date and time as MM/DD/YYYY,HH:MM.`, [line]);
  }
  const [month, day, year, hour, minute] = stamp.slice(1, 6).map(Number);
  if (minute !== 0) {
    return refuse("not-hourly", `Line ${line} is at minute ${minute}; a TMY3 file has one row an hour, on the hour.`, [
      line,
    ]);
  }
  const fields = text.split(",");
  if (fields.length <= dryBulbAt) {
    return refuse(
      "bad-row",
      `Line ${line} has ${fields.length} fields and ends before the dry bulb (field ${dryBulbAt + 1}). The file may be cut off; download it again.`,
      [line],
    );
  }
  const dryBulb = readDryBulb(fields[dryBulbAt] ?? "");
  if (dryBulb.status === "not-a-number") {
    return refuse("bad-row", `Line ${line}: the dry bulb is "${dryBulb.text}", not a number.`, [line]);
  }
  return { line, year: year ?? 0, month: month ?? 0, day: day ?? 0, hour: hour ?? 0, dryBulbC: dryBulb.dryBulbC };
}
