import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { findWeatherYear } from "@/db/queries/weather";
import type { TypeYear } from "@/lib/energy-model/meter/kelvin-worth";
import type { DayType, MeterModel } from "@/lib/energy-model/meter/meter-model";
import { occupiedWeatherYear } from "@/lib/energy-model/occupied-weather-year";
import type { Context } from "../context";
import { unpackDryBulbC } from "../weather/import";

/** The year that a meter's models are applied to, by day type, and what it is called. */
export type ModelYear = { types: TypeYear[]; name: string };

const DAYS = 365;
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * The building's weather year where there is one, so that a saving is that of usual weather; else the recorded year with its
 * missing days made up. Means are of days for an interval meter and of months for bills: a model is good only for
 * temperatures averaged as those that it was fitted to (reference Q7).
 */
export function modelYear(ctx: Context, building: BuildingRow, model: MeterModel): ModelYear {
  const weather = findWeatherYear(ctx.db, building.id);
  if (!weather) return { types: recordedYear(model), name: "the recorded year" };
  const hourlyC = unpackDryBulbC(weather);
  const daily = Array.from({ length: DAYS }, (_, day) => meanOf(hourlyC.subarray(day * 24, day * 24 + 24)));
  const name = `the weather year of ${weather.station}`;
  if (model.length === "bill") return { types: [monthsOf(daily)], name };
  const { occupied } = occupiedWeatherYear({
    hours: findOccupiedHours(ctx.db, building.id),
    timeZone: building.timeZone,
    utcOffsetHours: weather.utcOffsetHours,
    calendarYear: Number(model.record.to.slice(0, 4)),
  });
  const isOccupied = daily.map((_, day) => occupied.subarray(day * 24, day * 24 + 24).some((part) => part > 0));
  const typeYear = (type: DayType, wanted: boolean): TypeYear => {
    const outdoorC = Float64Array.from(daily.filter((_, day) => isOccupied[day] === wanted));
    return { type, outdoorC, daysEach: new Float64Array(outdoorC.length).fill(1) };
  };
  return { types: [typeYear("occupied-days", true), typeYear("other-days", false)], name };
}

function recordedYear({ types, length, record }: MeterModel): TypeYear[] {
  const readings = types.reduce((sum, each) => sum + each.readings.length, 0);
  const each = readings > 0 ? (length === "bill" ? DAYS / readings : Math.min(DAYS, record.count) / readings) : 0;
  return types.map(({ type, readings }) => {
    const outdoorC = Float64Array.from(readings, (reading) => reading.outdoorC);
    return { type, outdoorC, daysEach: new Float64Array(outdoorC.length).fill(each) };
  });
}

function monthsOf(daily: readonly number[]): TypeYear {
  let first = 0;
  const means = MONTH_DAYS.map((days) => {
    const mean = meanOf(Float64Array.from(daily.slice(first, first + days)));
    first += days;
    return mean;
  });
  return { type: "bills", outdoorC: Float64Array.from(means), daysEach: Float64Array.from(MONTH_DAYS) };
}

const meanOf = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0) / values.length;
