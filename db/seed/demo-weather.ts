import { readFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync } from "node:zlib";

export const HOURS_IN_WEATHER_YEAR = 8760;

/** Hourly weather of a year; index 0 is the hour that ends at 01:00 on 1 January, station's standard time. */
export type DemoWeather = {
  fileName: string;
  /** The file as a weather import would meet it. */
  bytes: Buffer;
  station: string;
  latitude: number;
  longitude: number;
  utcOffsetHours: number;
  dryBulbC: Float64Array;
  dewPointC: Float64Array;
  globalHorizontalWpm2: Float64Array;
  directNormalWpm2: Float64Array;
  diffuseHorizontalWpm2: Float64Array;
};

const FILE_NAME = "723170TYA.CSV";

const COLUMNS = {
  dryBulbC: "Dry-bulb (C)",
  dewPointC: "Dew-point (C)",
  globalHorizontalWpm2: "GHI (W/m^2)",
  directNormalWpm2: "DNI (W/m^2)",
  diffuseHorizontalWpm2: "DHI (W/m^2)",
} as const;

/** Reads the TMY3 file that is shipped with the seed: temperatures and radiation, in the file's order. */
export function readDemoWeather(): DemoWeather {
  const bytes = gunzipSync(readFileSync(path.join(process.cwd(), "db", "seed", "weather", `${FILE_NAME}.gz`)));
  const [place = "", headings = "", ...rows] = bytes.toString("latin1").trimEnd().split(/\r?\n/);
  if (rows.length !== HOURS_IN_WEATHER_YEAR)
    throw new Error(`${FILE_NAME} has ${rows.length} hours, not ${HOURS_IN_WEATHER_YEAR}: restore the file`);
  const fields = rows.map((row) => row.split(","));
  const names = headings.split(",");
  const column = (heading: string): Float64Array => {
    const at = names.indexOf(heading);
    if (at < 0) throw new Error(`${FILE_NAME} has no column "${heading}": restore the file`);
    return Float64Array.from(fields, (row, hour) => {
      const value = Number(row[at]);
      if (row[at] === "" || !Number.isFinite(value))
        throw new Error(`${FILE_NAME}, line ${hour + 3}: "${row[at]}" is not a number`);
      return value;
    });
  };
  const [, name = "", state = "", utcOffset, latitude, longitude] = place.split(",");
  return {
    fileName: FILE_NAME,
    bytes,
    station: `${name.replaceAll('"', "")}, ${state}`,
    latitude: Number(latitude),
    longitude: Number(longitude),
    utcOffsetHours: Number(utcOffset),
    dryBulbC: column(COLUMNS.dryBulbC),
    dewPointC: column(COLUMNS.dewPointC),
    globalHorizontalWpm2: column(COLUMNS.globalHorizontalWpm2),
    directNormalWpm2: column(COLUMNS.directNormalWpm2),
    diffuseHorizontalWpm2: column(COLUMNS.diffuseHorizontalWpm2),
  };
}
