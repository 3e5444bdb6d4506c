import type { SettingPower } from "./setting-reading";
import { scaledRange, summedRange, type ValueRange } from "./value-range";

export type SettingUse = { hoursPerYear: number; dutyFraction: number };

export type SettingEnergy =
  | { status: "ok"; energyKwh: ValueRange }
  | { status: "refused"; code: "impossible-use"; message: string };

/**
 * Energy of one setting in kWh a year: E = P·h·d/1000, `hoursPerYear` hours selected and `dutyFraction` the share
 * of them in which the thermostat lets it run. Hours and duty count as exact; the range is that of the power.
 */
export function settingEnergy(powerW: ValueRange, use: SettingUse): SettingEnergy {
  if (!(use.hoursPerYear >= 0 && use.hoursPerYear <= 8784)) {
    return impossible(`The hours a year must lie between 0 and 8784; ${use.hoursPerYear} is on record. Correct them.`);
  }
  if (!(use.dutyFraction >= 0 && use.dutyFraction <= 1)) {
    return impossible(`The duty cycle must lie between 0 and 1; ${use.dutyFraction} is on record. Correct it.`);
  }
  return { status: "ok", energyKwh: scaledRange(powerW, (use.hoursPerYear * use.dutyFraction) / 1000) };
}

const impossible = (message: string): SettingEnergy => ({ status: "refused", code: "impossible-use", message });

export type DeviceSettingUse = SettingUse & { name: string; power: SettingPower };

export type DeviceEnergy =
  | {
      status: "ok";
      settings: { name: string; outcome: SettingEnergy | { status: "no-power"; message: string } }[];
      totalKwh: ValueRange;
      /** True when a setting's figure is an upper bound. */
      isUpperBound: boolean;
      /** Settings with hours whose energy is not in the total, because their power is not known. */
      leftOut: string[];
      /** Hours of the year with no setting selected; they count with no energy. */
      unassignedHours: number;
    }
  | { status: "refused"; code: "hours-over-year" | "impossible-use"; message: string };

/** Energy of a device in kWh a year, E = Σ P·h·d/1000 over its settings. Selected hours may not exceed the year's. */
export function deviceEnergy(settings: readonly DeviceSettingUse[], hoursInYear: 8760 | 8784 = 8760): DeviceEnergy {
  const hours = settings.reduce((sum, each) => sum + each.hoursPerYear, 0);
  if (hours > hoursInYear) {
    return {
      status: "refused",
      code: "hours-over-year",
      message: `The settings are selected for ${Math.round(hours)} hours together, and the year has ${hoursInYear}. Only one setting can be on at a time: lower the hours of one of ${settings.map((each) => each.name).join(", ")}.`,
    };
  }
  const parts: ValueRange[] = [];
  const leftOut: string[] = [];
  const results: Extract<DeviceEnergy, { status: "ok" }>["settings"] = [];
  for (const { name, power, ...use } of settings) {
    if (power.status === "refused") {
      results.push({ name, outcome: { status: "no-power", message: power.message } });
      if (use.hoursPerYear > 0) leftOut.push(name);
      continue;
    }
    const outcome = settingEnergy(power.powerW, use);
    if (outcome.status === "refused") return { ...outcome, message: `${name}: ${outcome.message}` };
    results.push({ name, outcome });
    parts.push(outcome.energyKwh);
  }
  return {
    status: "ok",
    settings: results,
    totalKwh: summedRange(parts),
    isUpperBound: settings.some(
      ({ power, hoursPerYear }) => power.status === "ok" && power.isUpperBound && hoursPerYear > 0,
    ),
    leftOut,
    unassignedHours: hoursInYear - hours,
  };
}
