import { findWeatherYear, type WeatherYearRow } from "@/db/queries/weather";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";

export type WeatherSummary = Omit<WeatherYearRow, "dryBulbTenthsC">;

/** The building's weather year without its hours, or null. */
export function readWeather(ctx: Context, buildingId: number): WeatherSummary | null {
  requireFacilities(ctx);
  const row = findWeatherYear(ctx.db, buildingId);
  if (!row) return null;
  const { dryBulbTenthsC: _, ...summary } = row;
  return summary;
}
