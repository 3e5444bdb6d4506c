import { numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { ZoneHistory } from "@/lib/services/zones/history";
import type { ZoneInput } from "@/lib/services/zones/zone-input";
import { cfmFromM3ps, m3psFromCfm, m3psFromLps } from "@/lib/units/airflow";
import { ft2FromM2, m2FromFt2 } from "@/lib/units/area";
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from "@/lib/units/temperature";

export type AreaUnit = "m2" | "ft2";
export type ZoneUnits = { areaUnit: AreaUnit; temperatureUnit: "C" | "F" };

export const unitsOf = ({ areaUnit, temperatureUnit }: ZoneUnits): ZoneUnits => ({ areaUnit, temperatureUnit });

/** Airflow goes with the area's system: cubic feet a minute with square feet, litres a second with square metres. */
export const airflowUnit = (areaUnit: AreaUnit): string => (areaUnit === "ft2" ? "cfm" : "L/s");

export function zoneInputFromForm(values: PostedValues, { areaUnit, temperatureUnit }: ZoneUnits): ZoneInput {
  const flow = areaUnit === "ft2" ? m3psFromCfm : m3psFromLps;
  const convert = (value: number | null, by: (value: number) => number) => (value === null ? null : by(value));
  return {
    code: textOf(values, "code"),
    name: textOf(values, "name"),
    floor: textOf(values, "floor"),
    airHandler: textOf(values, "airHandler"),
    floorAreaM2: convert(numberOf(values, "floorAreaM2"), areaUnit === "ft2" ? m2FromFt2 : Number),
    designAirflowM3ps: convert(numberOf(values, "designAirflowM3ps"), flow),
    minimumAirflowM3ps: convert(numberOf(values, "minimumAirflowM3ps"), flow),
    targetZoneAirTempC: convert(
      numberOf(values, "targetZoneAirTempC"),
      temperatureUnit === "F" ? celsiusFromFahrenheit : Number,
    ),
    fixInProgress: textOf(values, "fixInProgress"),
  };
}

export function formFromZone(zone: ZoneHistory["zone"], { areaUnit, temperatureUnit }: ZoneUnits): PostedValues {
  const target = zone.targetZoneAirTempC;
  const flow = (value: number | null) =>
    value === null ? "" : short(areaUnit === "ft2" ? cfmFromM3ps(value) : value * 1000);
  return {
    code: zone.code,
    name: zone.name,
    floor: zone.floor,
    airHandler: zone.airHandler,
    floorAreaM2:
      zone.floorAreaM2 === null ? "" : short(areaUnit === "ft2" ? ft2FromM2(zone.floorAreaM2) : zone.floorAreaM2),
    designAirflowM3ps: flow(zone.designAirflowM3ps),
    minimumAirflowM3ps: flow(zone.minimumAirflowM3ps),
    targetZoneAirTempC: target === null ? "" : short(temperatureUnit === "F" ? fahrenheitFromCelsius(target) : target),
    fixInProgress: zone.fixInProgress,
  };
}

const short = (value: number): string => String(Number(value.toPrecision(6)));
