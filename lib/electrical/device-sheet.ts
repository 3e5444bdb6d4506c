import type { Origin, Working } from "@/lib/working/working";
import { settingCurrentA } from "./circuit/setting-current";
import { deviceClassById } from "./device-classes";
import { readingOf } from "./device-figures";
import type { DeviceKind, PowerBasis } from "./device-kind";
import { settingWorkings } from "./device-working";
import { type DeviceEnergy, deviceEnergy } from "./setting-energy";
import { settingPower } from "./setting-power";
import type { SettingPower } from "./setting-reading";
import type { UseBasis } from "./use-basis";
import { scaledRange, summedRange, type ValueRange } from "./value-range";

/** One setting as it stands on the measurement sheet. */
export type SheetSetting = {
  name: string;
  basis: PowerBasis;
  currentA: number | null;
  currentResolutionA: number | null;
  voltageV: number | null;
  voltageMeasured: boolean;
  powerFactor: number | null;
  powerW: number | null;
  nameplateW?: number | null;
  clampTurns?: number;
  meterAccuracyPct?: number | null;
  meterAccuracyCounts?: number | null;
  isTrueRms?: boolean | null;
  openVoltageV?: number | null;
  useBasis?: UseBasis;
  hoursPerYear: number;
  dutyFraction: number;
};

export type SheetInput = {
  kind: DeviceKind;
  deviceClassId: string;
  settings: readonly SheetSetting[];
  /** What its nameplate says of the device as a whole. */
  nameplateW?: number | null;
  nameplateVoltageV?: number | null;
  price: { pricePerKwh: number; currency: string; origin: Origin; source?: string; href?: string };
  /** Page of the device, for the readings behind a value. */
  href?: string;
};

export type SheetLine = {
  name: string;
  basis: PowerBasis;
  hoursPerYear: number;
  useBasis: UseBasis;
  power: SettingPower;
  /** What it takes of a circuit [A]. */
  currentA: number | null;
  energyKwh: ValueRange | null;
  cost: ValueRange | null;
  workings: { power: Working; energy: Working; cost: Working } | null;
};

export type DeviceSheet = {
  lines: SheetLine[];
  energy: DeviceEnergy;
  totalCost: ValueRange | null;
  /** Highest power of any setting whose power is known [W]. */
  highPowerW: number;
};

/**
 * The settings of a device side by side: W, kWh a year and cost a year of each, and the device's total. Cheap enough
 * to follow every key that is typed. Money is in major units, not rounded.
 */
export function deviceSheet(input: SheetInput): DeviceSheet {
  const deviceClass = deviceClassById(input.deviceClassId);
  const powers = input.settings.map((setting) => settingPower(readingOf(setting, input), deviceClass));
  const energy = deviceEnergy(input.settings.map((setting, i) => ({ ...setting, power: powers[i] as SettingPower })));
  const lines = input.settings.map((setting, i): SheetLine => {
    const power = powers[i] as SettingPower;
    const reading = readingOf(setting, input);
    const line = {
      name: setting.name,
      basis: setting.basis,
      hoursPerYear: setting.hoursPerYear,
      useBasis: setting.useBasis ?? ("entered" as const),
      power,
      currentA: settingCurrentA(reading, power, deviceClass, deviceClass?.nominalVoltageV ?? 120),
    };
    const outcome = energy.status === "ok" ? energy.settings[i]?.outcome : undefined;
    if (power.status === "refused" || outcome?.status !== "ok") {
      return { ...line, energyKwh: null, cost: null, workings: null };
    }
    return {
      ...line,
      energyKwh: outcome.energyKwh,
      cost: scaledRange(outcome.energyKwh, input.price.pricePerKwh),
      workings: settingWorkings({
        reading,
        deviceClass,
        power,
        hoursPerYear: setting.hoursPerYear,
        dutyFraction: setting.dutyFraction,
        useBasis: setting.useBasis,
        price: input.price,
        href: input.href,
      }),
    };
  });
  const costs = lines.flatMap((line) => line.cost ?? []);
  return {
    lines,
    energy,
    totalCost: costs.length > 0 ? summedRange(costs) : null,
    highPowerW: Math.max(0, ...powers.map((power) => (power.status === "ok" ? power.powerW.value : 0))),
  };
}
