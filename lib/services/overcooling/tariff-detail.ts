import type { BuildingRow } from "@/db/queries/buildings";
import { findTariff, type TariffRow } from "@/db/queries/tariffs";
import { weatherClock } from "@/lib/energy-model/weather-clock";
import { coolingPeakMonths, type DemandYear } from "@/lib/finance/billed-demand";
import { hoursByBlock, hoursByPeriod, type PricedHours, type WeightedHours } from "@/lib/finance/tariff";
import type { AssessmentInput, ElectricityPrice } from "@/lib/overcooling/assessment-input";
import type { Context } from "../context";

/** The clock and the year that are laid on a weather year. */
export type WeatherCalendar = { timeZone: string; utcOffsetHours: number; calendarYear: number };
type Weather = { year: NonNullable<AssessmentInput["weather"]>; calendar: WeatherCalendar };

/**
 * What a building's tariff says beyond one price, over the occupied cooling-season hours of its weather year. Nothing
 * without a weather year, with a blended price, or without a tariff: the price of the settings then stands.
 */
export function tariffDetail(
  ctx: Context,
  building: BuildingRow,
  weather: Weather | null,
  seasonThresholdC: number,
): Pick<ElectricityPrice, "pricedHours" | "demandYear"> {
  const tariff = findTariff(ctx.db, building.id);
  if (!tariff || !weather || building.electricityPriceKind === "blended")
    return { pricedHours: null, demandYear: null };
  const { dryBulbC, occupied } = weather.year;
  const hours: WeightedHours = {
    ...weatherClock(weather.calendar),
    weight: Float64Array.from(occupied, (part, i) => ((dryBulbC[i] as number) >= seasonThresholdC ? part : 0)),
  };
  return {
    pricedHours: pricedHours(tariff, hours, building.electricityPricePerKwh),
    demandYear: demandYear(tariff, hours, building.demandMonths),
  };
}

function pricedHours(tariff: TariffRow, hours: WeightedHours, otherPrice: number): PricedHours[] | null {
  const priced =
    tariff.energyKind === "time-of-use"
      ? hoursByPeriod(hours, tariff.periods, otherPrice)
      : tariff.energyKind === "blocks" && tariff.bills
        ? hoursByBlock(
            hours,
            tariff.blocks,
            tariff.bills.map((each) => each.energyKwh),
          )
        : [];
  return priced.length > 0 ? priced : null;
}

function demandYear(
  { bills, ratchetFraction }: TariffRow,
  hours: WeightedHours,
  months: number | null,
): DemandYear | null {
  if (!bills || months === null) return null;
  const seasonHours = new Array<number>(12).fill(0);
  for (let i = 0; i < hours.weight.length; i++) {
    const month = (hours.month[i] as number) - 1;
    seasonHours[month] = (seasonHours[month] as number) + (hours.weight[i] as number);
  }
  const peaksKw = bills.map((each) => each.demandKw);
  return {
    peaksKw,
    ratchetFraction: ratchetFraction ?? 0,
    coolingMonths: coolingPeakMonths(peaksKw, seasonHours, months),
  };
}
