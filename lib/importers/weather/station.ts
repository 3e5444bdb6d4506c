import { refuse, type WeatherFinding, type WeatherRefusal, type WeatherStation } from "./weather-file";

/** 15° of longitude an hour; legal time strays up to about 3 h from it (western China, common knowledge of the map). */
const LARGEST_OFFSET_DEPARTURE_H = 3.5;

type StationText = { nameParts: readonly string[]; latitude: string; longitude: string; utcOffset: string };

/** Place and clock of a weather file, from the fields of its first line. */
export function readStation(
  text: StationText,
): { status: "ok"; station: WeatherStation; findings: WeatherFinding[] } | WeatherRefusal {
  const station = text.nameParts.map((part) => part.trim()).filter((part) => part !== "" && part !== "-");
  const latitude = within(text.latitude, -90, 90);
  if (latitude === null) return badField("latitude", text.latitude, "-90 to 90 degrees");
  const longitude = within(text.longitude, -180, 180);
  if (longitude === null) return badField("longitude", text.longitude, "-180 to 180 degrees");
  const utcOffsetHours = within(text.utcOffset, -12, 14);
  if (utcOffsetHours === null) return badField("time zone", text.utcOffset, "-12 to 14 hours from UTC");

  const findings: WeatherFinding[] = [];
  const solarOffsetHours = longitude / 15;
  if (Math.abs(utcOffsetHours - solarOffsetHours) > LARGEST_OFFSET_DEPARTURE_H) {
    findings.push({
      code: "offset-far-from-longitude",
      severity: "caution",
      evidence: { utcOffsetHours, solarOffsetHours, longitude },
    });
  }
  return { status: "ok", station: { station: station.join(", "), latitude, longitude, utcOffsetHours }, findings };
}

function within(text: string, low: number, high: number): number | null {
  const value = Number(text);
  return text.trim() !== "" && Number.isFinite(value) && value >= low && value <= high ? value : null;
}

function badField(name: string, text: string, limits: string): WeatherRefusal {
  const found = text.trim() === "" ? "is blank" : `is "${text.trim()}"`;
  return refuse("bad-header", `The ${name} in the first line ${found}; it should be ${limits}. Correct the line.`, [1]);
}
