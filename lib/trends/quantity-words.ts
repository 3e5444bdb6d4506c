import { localDateFromDayNumber } from "@/lib/time/civil-date";
import { formatLocal } from "@/lib/time/format";
import { zoneTable } from "@/lib/time/zone-table";
import { cfmFromM3ps } from "@/lib/units/airflow";
import { fahrenheitDifferenceFromKelvin, fahrenheitFromCelsius } from "@/lib/units/temperature";

type Value = string | number | boolean | readonly (string | number)[] | null | undefined;

/** Quantities in words, in the units a building is shown in. A value that is not known reads "unknown". */
export type QuantityWords = {
  temp(tempC: Value): string;
  /** A signed difference. */
  difference(differenceK: Value): string;
  /** A difference without its sign. */
  size(differenceK: Value): string;
  airflow(airflowM3ps: Value): string;
  hours(hours: Value): string;
  hoursOf(hours: Value, of: Value): string;
  date(utcSeconds: Value): string;
  /** Date and time on the wall clock, with the zone's word for its offset. */
  instant(utcSeconds: Value): string;
  list(names: Value): string;
};

/** Words in °C and L/s, or in °F and cfm, with dates on the wall clock of `timeZone`. */
export function quantityWords(unit: "C" | "F", timeZone: string): QuantityWords {
  const inC = unit === "C";
  const known = (value: Value, say: (value: number) => string): string =>
    typeof value === "number" && Number.isFinite(value) ? say(value) : "unknown";
  const step = (value: number): string =>
    inC ? `${value.toFixed(1)} K` : `${fahrenheitDifferenceFromKelvin(value).toFixed(1)} °F`;
  const hours = (value: Value): string => known(value, (each) => `${each < 10 ? each.toFixed(1) : Math.round(each)} h`);
  return {
    temp: (value) =>
      known(value, (each) => (inC ? `${each.toFixed(1)} °C` : `${fahrenheitFromCelsius(each).toFixed(1)} °F`)),
    difference: (value) => known(value, (each) => `${step(Math.abs(each))} ${each < 0 ? "low" : "high"}`),
    size: (value) => known(value, (each) => step(Math.abs(each))),
    airflow: (value) =>
      known(value, (each) => (inC ? `${Math.round(each * 1000)} L/s` : `${Math.round(cfmFromM3ps(each))} cfm`)),
    hours,
    hoursOf: (value, of) =>
      typeof value === "number" && typeof of === "number" && of > 0
        ? `${hours(value)} of ${hours(of)} (${Math.round((100 * value) / of)} %)`
        : hours(value),
    date: (value) =>
      known(value, (each) => localDateFromDayNumber(Math.floor(zoneTable(timeZone).localFromUtc(each) / 86400))),
    instant: (value) => known(value, (each) => formatLocal(each * 1000, timeZone, "date-time-zone")),
    list: (value) => (Array.isArray(value) ? value.join(" and ").replaceAll("-", " ") : "unknown"),
  };
}
