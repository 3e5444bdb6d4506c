import { deviceClassById } from "./device-classes";
import type { PowerBasis } from "./device-kind";
import type { SheetInput, SheetSetting } from "./device-sheet";
import { nameplateOfSetting } from "./nameplate-comparison";
import { deviceEnergy } from "./setting-energy";
import { settingPower } from "./setting-power";
import type { SettingPower, SettingReading } from "./setting-reading";
import { scaledRange, type ValueRange } from "./value-range";

/** What a register says of a device in one line. */
export type DeviceFigures = {
  /** Highest power of any setting whose power is known [W]. */
  highPowerW: number;
  /** kWh a year; null when no setting's energy is known. */
  energyKwh: ValueRange | null;
  /** In major units of the price's currency a year. */
  cost: ValueRange | null;
  isUpperBound: boolean;
  /** How most of its energy is known; where there is none, how its highest power is. */
  origin: PowerBasis;
};

/** Reading of a setting as the sheet holds it, with what the device's nameplate says of it. */
export function readingOf(
  setting: SheetSetting,
  device: Pick<SheetInput, "kind" | "deviceClassId" | "nameplateW" | "nameplateVoltageV">,
): SettingReading {
  return {
    ...setting,
    kind: device.kind,
    settingName: setting.name,
    nameplateW: nameplateOfSetting(setting, {
      nameplateW: device.nameplateW,
      deviceClass: deviceClassById(device.deviceClassId),
    }),
    ratedVoltageV: device.nameplateVoltageV,
  };
}

/** The same energy and cost as the device's sheet, without the workings: for thousands of devices at a time. */
export function deviceFigures(input: Omit<SheetInput, "href">): DeviceFigures {
  const deviceClass = deviceClassById(input.deviceClassId);
  const powers = input.settings.map((setting): SettingPower => settingPower(readingOf(setting, input), deviceClass));
  const energy = deviceEnergy(
    input.settings.map((setting, i) => ({
      name: setting.name,
      hoursPerYear: setting.hoursPerYear,
      dutyFraction: setting.dutyFraction,
      power: powers[i] as SettingPower,
    })),
  );
  const known = energy.status === "ok" && energy.settings.some(({ outcome }) => outcome.status === "ok");
  const energyKwh = known ? energy.totalKwh : null;
  return {
    highPowerW: Math.max(0, ...powers.map((power) => (power.status === "ok" ? power.powerW.value : 0))),
    energyKwh,
    cost: energyKwh && scaledRange(energyKwh, input.price.pricePerKwh),
    isUpperBound: energy.status === "ok" && energy.isUpperBound,
    origin: originOfMost(input.settings, powers),
  };
}

function originOfMost(settings: readonly SheetSetting[], powers: readonly SettingPower[]): PowerBasis {
  const energyBy = new Map<PowerBasis, number>();
  let highest: { basis: PowerBasis; powerW: number } | null = null;
  settings.forEach(({ basis, hoursPerYear, dutyFraction }, i) => {
    const power = powers[i];
    if (power?.status !== "ok") return;
    const powerW = power.powerW.value;
    energyBy.set(basis, (energyBy.get(basis) ?? 0) + powerW * hoursPerYear * dutyFraction);
    if (highest === null || powerW > highest.powerW) highest = { basis, powerW };
  });
  const [most] = [...energyBy].sort(([, a], [, b]) => b - a);
  if (most && most[1] > 0) return most[0];
  return (highest as { basis: PowerBasis } | null)?.basis ?? settings[0]?.basis ?? "class-default";
}
