import { expect, it } from "vitest";
import { readDemoWeather } from "@/db/seed/demo-weather";
import { cosIncidence, cosZenith, sunAngles } from "@/db/seed/sun";
import { readWeatherFile } from "@/lib/importers/weather/read-weather-file";

const weather = readDemoWeather();

it("reads the year whose mean, minimum and maximum were published with the file's description", () => {
  const { dryBulbC } = weather;
  const mean = dryBulbC.reduce((sum, each) => sum + each, 0) / dryBulbC.length;
  // Counted by another program: mean 14.4218, minimum -16.7, maximum 35.6 °C.
  expect(mean).toBeCloseTo(14.4218, 4);
  expect(Math.min(...dryBulbC)).toBe(-16.7);
  expect(Math.max(...dryBulbC)).toBe(35.6);
});

it("reads what the importer of weather files reads", () => {
  const imported = readWeatherFile({ fileName: weather.fileName, bytes: weather.bytes });
  if (imported.status !== "ok") throw new Error(imported.message);
  expect(Array.from(weather.dryBulbC)).toEqual(Array.from(imported.dryBulbC));
  expect(weather.station).toBe(imported.station);
  expect([weather.latitude, weather.longitude, weather.utcOffsetHours]).toEqual([
    imported.latitude,
    imported.longitude,
    imported.utcOffsetHours,
  ]);
});

it("puts the sun where the file's own radiation says: global = direct x cos(zenith) + diffuse", () => {
  const { globalHorizontalWpm2: global, directNormalWpm2: direct, diffuseHorizontalWpm2: diffuse } = weather;
  const errorsOfDays = (from: number, to: number): number[] => {
    const errors: number[] = [];
    for (let hour = 24 * from; hour < 24 * to; hour++) {
      if ((direct[hour] as number) < 300) continue;
      const zenith = cosZenith(sunAngles({ ...weather, hourOfYear: hour + 0.5 }));
      errors.push((direct[hour] as number) * zenith + (diffuse[hour] as number) - (global[hour] as number));
    }
    return errors;
  };
  for (const [from, to] of [
    [0, 60],
    [60, 150],
    [150, 240],
    [240, 330],
  ] as const) {
    const errors = errorsOfDays(from, to);
    expect(errors.length).toBeGreaterThan(200);
    const bias = errors.reduce((sum, each) => sum + each, 0) / errors.length;
    const spread = Math.sqrt(errors.reduce((sum, each) => sum + each ** 2, 0) / errors.length);
    expect(Math.abs(bias)).toBeLessThan(8);
    expect(spread).toBeLessThan(20);
  }
});

it("has the sun on the east wall in the morning, on the west wall in the evening and on neither from behind", () => {
  const at = (hour: number) => sunAngles({ ...weather, hourOfYear: 172 * 24 + hour });
  expect(cosIncidence(at(8), "east")).toBeGreaterThan(0.7);
  expect(cosIncidence(at(8), "west")).toBeLessThan(0);
  expect(cosIncidence(at(17), "west")).toBeGreaterThan(0.7);
  const noon = sunAngles({ ...weather, hourOfYear: 12.35 });
  expect(cosIncidence(noon, "south")).toBeGreaterThan(0.8);
  expect(cosIncidence(noon, "north")).toBeCloseTo(-cosIncidence(noon, "south"), 12);
});
