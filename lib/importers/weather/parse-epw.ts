import { readDryBulb } from "./dry-bulb";
import { readStation } from "./station";
import { refuse, type WeatherFinding, type WeatherRefusal, type WeatherRow, type WeatherRows } from "./weather-file";

const HEADER_KEYWORDS = [
  "LOCATION",
  "DESIGN CONDITIONS",
  "TYPICAL/EXTREME PERIODS",
  "GROUND TEMPERATURES",
  "HOLIDAYS/DAYLIGHT SAVINGS",
  "COMMENTS 1",
  "COMMENTS 2",
  "DATA PERIODS",
] as const;

/** Fields up to the dry bulb: year, month, day, hour, minute, flags, dry bulb. */
const DRY_BULB_FIELD = 6;
const LONGEST_HEADER = 30;

/**
 * Rows of an EPW file: header lines up to DATA PERIODS, then one line an hour with hours 1-24, each named by its end,
 * in local standard time. The minute is 0 or 60 by the file's origin and means the same.
 */
export function parseEpw(lines: readonly string[]): WeatherRows {
  const dataPeriodsAt = lines.slice(0, LONGEST_HEADER).findIndex((line) => keyword(line) === "DATA PERIODS");
  if (dataPeriodsAt < 0) {
    return refuse(
      "bad-header",
      "The file begins with LOCATION but its header has no DATA PERIODS line, so the rows cannot be told from the header. Download the file again.",
      [1],
    );
  }
  const header = lines.slice(0, dataPeriodsAt + 1);
  const location = fieldsOf(header[0] ?? "");
  const read = readStation({
    nameParts: location.slice(1, 4),
    latitude: location[6] ?? "",
    longitude: location[7] ?? "",
    utcOffset: location[8] ?? "",
  });
  if (read.status !== "ok") return read;
  const refusal = checkDataPeriods(fieldsOf(header[dataPeriodsAt] ?? ""), dataPeriodsAt + 1);
  if (refusal) return refusal;

  const rows: WeatherRow[] = [];
  for (let at = dataPeriodsAt + 1; at < lines.length; at++) {
    const text = lines[at] ?? "";
    if (text.trim() === "") continue;
    const row = parseRow(text, at + 1);
    if ("status" in row) return row;
    rows.push(row);
  }
  return { status: "ok", station: read.station, rows, findings: [...read.findings, ...headerFindings(header)] };
}

const fieldsOf = (line: string): string[] => line.split(",").map((field) => field.trim());
const keyword = (line: string): string => (line.split(",")[0] ?? "").trim().toUpperCase();

function checkDataPeriods(fields: readonly string[], line: number): WeatherRefusal | null {
  if (fields[1] !== "1") {
    return refuse("bad-header", `Line ${line} announces ${fields[1] || "no"} data periods; one whole year is needed.`, [
      line,
    ]);
  }
  if (fields[2] === "1") return null;
  return refuse(
    "not-hourly",
    `Line ${line} announces ${fields[2] || "an unknown number of"} records an hour; one an hour is needed.`,
    [line],
  );
}

function parseRow(text: string, line: number): WeatherRow | WeatherRefusal {
  const fields = fieldsOf(text);
  const [year, month, day, hour, minute] = fields.slice(0, 5).map(Number);
  if (fields.length <= DRY_BULB_FIELD) {
    return refuse(
      "bad-row",
      `Line ${line} has ${fields.length} fields and ends before the dry bulb (field 7). The file may be cut off; download it again.`,
      [line],
    );
  }
  if (![year, month, day, hour].every(Number.isInteger)) {
    return refuse(
      "bad-row",
      `Line ${line} does not begin with year, month, day and hour ("${fields.slice(0, 4).join(",")}").`,
      [line],
    );
  }
  if (minute !== 0 && minute !== 60) {
    return refuse("not-hourly", `Line ${line} is at minute ${fields[4] || "?"}; hourly rows have minute 0 or 60.`, [
      line,
    ]);
  }
  const dryBulb = readDryBulb(fields[DRY_BULB_FIELD] ?? "");
  if (dryBulb.status === "not-a-number") {
    return refuse("bad-row", `Line ${line}: the dry bulb (field 7) is "${dryBulb.text}", not a number.`, [line]);
  }
  return { line, year: year ?? 0, month: month ?? 0, day: day ?? 0, hour: hour ?? 0, dryBulbC: dryBulb.dryBulbC };
}

function headerFindings(header: readonly string[]): WeatherFinding[] {
  const present = new Set(header.map(keyword));
  const findings: WeatherFinding[] = HEADER_KEYWORDS.filter((name) => !present.has(name)).map((name) => ({
    code: "header-line-missing",
    severity: "note",
    evidence: { name },
  }));
  const savings = header.find((line) => keyword(line) === "HOLIDAYS/DAYLIGHT SAVINGS");
  const [, , start, end] = savings ? fieldsOf(savings) : [];
  if (start && end && start !== "0" && end !== "0") {
    findings.push({ code: "daylight-saving-in-header", severity: "note", evidence: { start, end } });
  }
  return findings;
}
