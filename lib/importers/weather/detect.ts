import type { WeatherFormat } from "./weather-file";

/** Format of a weather file by its first two lines, never by its name. */
export function detectWeatherFormat(lines: readonly string[]): WeatherFormat | null {
  if (/^\s*LOCATION\s*,/i.test(lines[0] ?? "")) return "epw";
  if (/^\s*"?Date \(MM\/DD\/YYYY\)"?\s*,\s*"?Time \(HH:MM\)"?/i.test(lines[1] ?? "")) return "tmy3";
  return null;
}
