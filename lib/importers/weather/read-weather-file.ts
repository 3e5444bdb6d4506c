import { decodeText } from "@/lib/importers/tables/decode-text";
import { detectWeatherFormat } from "./detect";
import { fillGaps } from "./fill-gaps";
import { parseEpw } from "./parse-epw";
import { parseTmy3 } from "./parse-tmy3";
import { placeHours } from "./place-hours";
import { refuse, type WeatherRefusal, type WeatherYear } from "./weather-file";

/** Reads a whole year of outdoor air temperatures from an EPW or TMY3 file, or says why it cannot. */
export function readWeatherFile(file: { fileName: string; bytes: Uint8Array }): WeatherYear | WeatherRefusal {
  const decoded = decodeText(file.bytes);
  if (decoded.status !== "ok") return refuse("not-text", `${file.fileName}: ${decoded.message}`);
  const lines = decoded.text.split(/\r\n|\n|\r/);
  const format = detectWeatherFormat(lines);
  if (format === null) {
    return refuse(
      "unknown-format",
      `${file.fileName} is neither an EPW file (whose first line begins with LOCATION) nor a TMY3 file (a station line, then headings that begin with Date and Time). Use one of these two.`,
      [1],
    );
  }
  const parsed = format === "epw" ? parseEpw(lines) : parseTmy3(lines);
  if (parsed.status !== "ok") return parsed;
  const placed = placeHours(parsed.rows);
  if (placed.status !== "ok") return placed;
  const filled = fillGaps(placed.rows);
  if (filled.status !== "ok") return filled;
  return {
    status: "ok",
    format,
    ...parsed.station,
    dryBulbC: filled.dryBulbC,
    findings: [...parsed.findings, ...placed.findings, ...filled.findings],
  };
}
