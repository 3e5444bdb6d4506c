import { expect, it } from "vitest";
import { findWeatherYear } from "@/db/queries/weather";
import { readImportHistory } from "@/lib/services/imports/history";
import { importWeather, unpackDryBulbC } from "@/lib/services/weather/import";
import { readWeather } from "@/lib/services/weather/read";
import { smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";
import { bytesOf, dryBulbAt, epwText, tmy3Text, wholeYear } from "../importers/weather/weather-text";

const epw = { name: "elm.epw", bytes: bytesOf(epwText(wholeYear())) };

it("keeps a weather year's hours as they were, to a tenth", () => {
  const { ctx, buildingId } = smallOffice();
  expect(importWeather(ctx, buildingId, epw)).toEqual({
    state: "imported",
    station: expect.stringContaining("Elm Field"),
  });
  const row = findWeatherYear(ctx.db, buildingId);
  const dryBulbC = unpackDryBulbC(row as NonNullable<typeof row>);
  expect(dryBulbC).toHaveLength(8760);
  expect(dryBulbC[0]).toBe(dryBulbAt({ month: 1, hour: 1 }));
  expect(dryBulbC[8759]).toBe(dryBulbAt({ month: 12, hour: 24 }));
  expect(readImportHistory(ctx, buildingId)[0]).toMatchObject({ kind: "weather", state: "done", rowsInFile: 8760 });
});

it("refuses a year with missing hours in plain words, and the year in place stays", async () => {
  const { ctx, buildingId } = smallOffice();
  importWeather(ctx, buildingId, epw);
  const before = readWeather(ctx, buildingId);
  const rows = wholeYear().filter(({ month, day }) => !(month === 7 && day >= 4 && day <= 9));
  const error = await refusalOf(() => importWeather(ctx, buildingId, { name: "b.epw", bytes: bytesOf(epwText(rows)) }));
  expect(error.code).toBe("invalid");
  expect(error.message).toMatch(/144/);
  expect(readWeather(ctx, buildingId)).toEqual(before);
  expect(readImportHistory(ctx, buildingId)[0]).toMatchObject({ state: "refused", message: error.message });
});

it("changes nothing for the same file, and puts another in the place of the first", () => {
  const { ctx, buildingId } = smallOffice();
  importWeather(ctx, buildingId, epw);
  expect(importWeather(ctx, buildingId, epw).state).toBe("unchanged");
  expect(readImportHistory(ctx, buildingId)).toHaveLength(1);
  expect(importWeather(ctx, buildingId, { name: "n.csv", bytes: bytesOf(tmy3Text(wholeYear())) }).state).toBe(
    "imported",
  );
  expect(readWeather(ctx, buildingId)).toMatchObject({ format: "tmy3", fileName: "n.csv" });
});
