import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync } from "node:zlib";

const SHARED_DATA = path.resolve(import.meta.dirname, "../../../shared/data");
const EXPORTS = path.join(SHARED_DATA, "bas-point-exports");
const WEATHER = path.join(SHARED_DATA, "weather/USA_IL_Chicago-OHare.Intl.AP.725300_TMY3.epw.gz");

/** The real files are read where they lie beside the repository; without them the journey is skipped by name. */
export const hasRealFiles = existsSync(EXPORTS) && existsSync(WEATHER);

export type UploadedFile = { name: string; mimeType: string; buffer: Buffer };

/** Every point export of the set, one file a point. */
export const pointExports = (): UploadedFile[] =>
  readdirSync(EXPORTS)
    .filter((name) => name.endsWith(".csv"))
    .sort()
    .map((name) => ({ name, mimeType: "text/csv", buffer: readFileSync(path.join(EXPORTS, name)) }));

/** Lines of an export that hold a reading: all but the heading. */
export const readingLines = (name: string): string[] =>
  readFileSync(path.join(EXPORTS, name), "utf8").split(/\r?\n/).slice(1).filter(Boolean);

/** The weather year of the nearest station, unpacked. */
export const weatherYear = (): UploadedFile => ({
  name: "chicago-ohare.epw",
  mimeType: "text/plain",
  buffer: gunzipSync(readFileSync(WEATHER)),
});

/** The same year without the rows of 3 July, 05:00 to 09:00. */
export function weatherWithMissingHours(): UploadedFile {
  const { buffer, ...file } = weatherYear();
  const lines = buffer.toString("latin1").split(/\r?\n/);
  const kept = lines.filter((line) => !/^\d{4},7,3,[5-9],/.test(line));
  if (lines.length - kept.length !== 5) throw new Error("the weather file is not the one that was meant");
  return { ...file, name: "with-a-gap.epw", buffer: Buffer.from(kept.join("\r\n"), "latin1") };
}

/**
 * Mean of a temperature export with naive local stamps over occupied hours, in the unit of the file: Monday to Friday
 * 07:00 to 17:00 but for one holiday. Straight from the text, without the product.
 */
export function occupiedMean(name: string, holiday: { month: number; day: number }): number {
  const values = readingLines(name).flatMap((line) => {
    const match = /^(\d+)\/(\d+)\/(\d{4}) (\d+):\d\d,\s*(-?[\d.]+)$/.exec(line);
    if (!match) throw new Error(`${name}: ${line}`);
    const [month, day, year, hour, value] = match.slice(1).map(Number) as [number, number, number, number, number];
    const weekday = new Date(Date.UTC(year, month - 1, day)).getUTCDay();
    const isHoliday = month === holiday.month && day === holiday.day;
    return weekday >= 1 && weekday <= 5 && hour >= 7 && hour < 17 && !isHoliday ? [value] : [];
  });
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
