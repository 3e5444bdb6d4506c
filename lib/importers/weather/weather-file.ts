import type { Finding } from "@/lib/findings/finding";

export type WeatherFormat = "epw" | "tmy3";

export type WeatherFindingCode =
  | "missing-values-filled"
  | "values-out-of-range"
  | "leap-day-dropped"
  | "months-from-different-years"
  | "rows-not-in-calendar-order"
  | "header-line-missing"
  | "daylight-saving-in-header"
  | "offset-far-from-longitude";
export type WeatherFinding = Finding<WeatherFindingCode>;

export type WeatherRefusalCode =
  | "not-text"
  | "unknown-format"
  | "bad-header"
  | "not-hourly"
  | "bad-row"
  | "hours-missing"
  | "hour-twice"
  | "values-missing";

export type WeatherRefusal = {
  status: "refused";
  code: WeatherRefusalCode;
  message: string;
  /** Physical lines of the file that the refusal is about; the first is line 1. */
  lines: readonly number[];
};

export type WeatherStation = { station: string; latitude: number; longitude: number; utcOffsetHours: number };

/**
 * A year of hourly outdoor air temperatures. Index 0 is the hour that ends at 01:00 on 1 January in the station's
 * standard time; there is no daylight saving time and no 29 February.
 */
export type WeatherYear = WeatherStation & {
  status: "ok";
  format: WeatherFormat;
  dryBulbC: Float64Array;
  findings: readonly WeatherFinding[];
};

/** One data row as written: `dryBulbC` is null where the file says that the value is missing. */
export type WeatherRow = {
  line: number;
  year: number;
  month: number;
  day: number;
  /** Hour ending, 1-24. */
  hour: number;
  dryBulbC: number | null;
};

/** What a format's reader hands over: station, rows in file order and findings about the header. */
export type WeatherRows =
  | { status: "ok"; station: WeatherStation; rows: readonly WeatherRow[]; findings: readonly WeatherFinding[] }
  | WeatherRefusal;

export function refuse(code: WeatherRefusalCode, message: string, lines: readonly number[] = []): WeatherRefusal {
  return { status: "refused", code, message, lines };
}
