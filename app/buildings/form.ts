import { checkedOf, choiceOf, numberOf, type PostedValues, requiredNumberOf, textOf } from "@/app/_server/form-fields";
import type { BuildingInput } from "@/lib/services/buildings/building-input";
import type { Building } from "@/lib/services/buildings/find";
import type { DayInterval } from "@/lib/time/occupied-hours";
import { ft2FromM2, m2FromFt2 } from "@/lib/units/area";
import { kwhFromTherms } from "@/lib/units/energy";
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from "@/lib/units/temperature";

export const WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;

/** Posted strings and display units to what the use-case takes. */
export function buildingInputFromForm(values: PostedValues): BuildingInput {
  const temperatureUnit = choiceOf<"C" | "F">(values, "temperatureUnit");
  const areaUnit = choiceOf<"m2" | "ft2">(values, "areaUnit");
  const area = requiredNumberOf(values, "floorAreaM2");
  const target = requiredNumberOf(values, "targetZoneAirTempC");
  const present = numberOf(values, "presentCoolingSetpointC");
  const heatPrice = numberOf(values, "heatPricePerKwh");
  const weekdays: Record<string, DayInterval[]> = {};
  WEEKDAYS.forEach((_, index) => {
    const intervals = intervalsFromText(textOf(values, `occupiedHours.weekdays.${index + 1}`));
    if (intervals.length > 0) weekdays[index + 1] = intervals;
  });
  return {
    name: textOf(values, "name"),
    timeZone: textOf(values, "timeZone"),
    currency: textOf(values, "currency").toUpperCase(),
    temperatureUnit,
    areaUnit,
    floorAreaM2: areaUnit === "ft2" ? m2FromFt2(area) : area,
    systemType: choiceOf(values, "systemType"),
    hasEconomizer: checkedOf(values, "hasEconomizer"),
    heatingFuel: choiceOf(values, "heatingFuel"),
    electricityPriceKind: choiceOf(values, "electricityPriceKind"),
    electricityPricePerKwh: requiredNumberOf(values, "electricityPricePerKwh"),
    demandPricePerKw: numberOf(values, "demandPricePerKw"),
    demandMonths: numberOf(values, "demandMonths"),
    heatPricePerKwh:
      heatPrice !== null && textOf(values, "heatPriceUnit") === "therm" ? heatPrice / kwhFromTherms(1) : heatPrice,
    complaintHours: numberOf(values, "complaintHours"),
    labourPricePerHour: numberOf(values, "labourPricePerHour"),
    targetZoneAirTempC: temperatureUnit === "F" ? celsiusFromFahrenheit(target) : target,
    presentCoolingSetpointC: present !== null && temperatureUnit === "F" ? celsiusFromFahrenheit(present) : present,
    mainsVoltageV: requiredNumberOf(values, "mainsVoltageV"),
    occupiedHours: {
      weekdays,
      holidays: textOf(values, "holidays")
        .split(/[\s,;]+/)
        .filter(Boolean),
    },
  };
}

/** "07:00-12:00, 13:00-18:00" as intervals; what cannot be read becomes an interval that the use-case refuses. */
export function intervalsFromText(text: string): DayInterval[] {
  if (text === "") return [];
  return text.split(/[,;]/).map((part) => {
    const match = /^(\d{1,2})[:.]?(\d{2})?\s*(?:-|\u2013|to)\s*(\d{1,2})[:.]?(\d{2})?$/.exec(part.trim());
    if (!match) return { startMinute: Number.NaN, endMinute: Number.NaN };
    const minutes = (hour: string | undefined, minute: string | undefined) => Number(hour) * 60 + Number(minute ?? 0);
    return { startMinute: minutes(match[1], match[2]), endMinute: minutes(match[3], match[4]) };
  });
}

export function textFromIntervals(intervals: readonly DayInterval[] = []): string {
  const clock = (minute: number) =>
    `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
  return intervals.map((each) => `${clock(each.startMinute)}-${clock(each.endMinute)}`).join(", ");
}

/** A building as the form shows it, in the building's own display units. */
export function formFromBuilding(building: Building): PostedValues {
  const values: PostedValues = {
    name: building.name,
    timeZone: building.timeZone,
    currency: building.currency,
    temperatureUnit: building.temperatureUnit,
    areaUnit: building.areaUnit,
    floorAreaM2: short(building.areaUnit === "ft2" ? ft2FromM2(building.floorAreaM2) : building.floorAreaM2, 6),
    systemType: building.systemType,
    heatingFuel: building.heatingFuel,
    electricityPriceKind: building.electricityPriceKind,
    electricityPricePerKwh: String(building.electricityPricePerKwh),
    demandPricePerKw: optional(building.demandPricePerKw),
    demandMonths: optional(building.demandMonths),
    heatPricePerKwh: building.heatPricePerKwh === null ? "" : short(building.heatPricePerKwh, 6),
    heatPriceUnit: "kwh",
    complaintHours: optional(building.complaintHours),
    labourPricePerHour: optional(building.labourPricePerHour),
    targetZoneAirTempC: short(
      building.temperatureUnit === "F"
        ? fahrenheitFromCelsius(building.targetZoneAirTempC)
        : building.targetZoneAirTempC,
      4,
    ),
    presentCoolingSetpointC:
      building.presentCoolingSetpointC === null
        ? ""
        : short(
            building.temperatureUnit === "F"
              ? fahrenheitFromCelsius(building.presentCoolingSetpointC)
              : building.presentCoolingSetpointC,
            4,
          ),
    mainsVoltageV: String(building.mainsVoltageV),
    holidays: building.occupiedHours.holidays.join("\n"),
  };
  if (building.hasEconomizer) values.hasEconomizer = "on";
  WEEKDAYS.forEach((_, index) => {
    values[`occupiedHours.weekdays.${index + 1}`] = textFromIntervals(building.occupiedHours.weekdays[index + 1]);
  });
  return values;
}

/** What a new building starts from: an ordinary office week, nothing about money. */
export const NEW_BUILDING: PostedValues = {
  temperatureUnit: "C",
  areaUnit: "m2",
  systemType: "vav-reheat-minimum-unknown",
  hasEconomizer: "on",
  heatingFuel: "gas",
  electricityPriceKind: "marginal",
  heatPriceUnit: "kwh",
  targetZoneAirTempC: "23.0",
  mainsVoltageV: "120",
  ...Object.fromEntries([1, 2, 3, 4, 5].map((day) => [`occupiedHours.weekdays.${day}`, "08:00-18:00"])),
};

const optional = (value: number | null): string => (value === null ? "" : String(value));
const short = (value: number, digits: number): string => String(Number(value.toPrecision(digits)));
