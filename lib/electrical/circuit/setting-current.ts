import type { DeviceClass } from "../device-classes";
import { settingLoad } from "../device-kind";
import type { SettingPower, SettingReading } from "../setting-reading";

/**
 * Current of a setting in A at the voltage it was read at: as the clamp meter gave it, else its power over volts and power factor.
 * A fan's watts say less than its amperes: without a power factor its class's lowest counts. Null when its power is not known.
 */
export function settingCurrentA(
  reading: Pick<SettingReading, "kind" | "settingName" | "currentA" | "voltageV" | "powerFactor">,
  power: SettingPower,
  deviceClass: DeviceClass | null,
  nominalVoltageV: number,
): number | null {
  if (power.status === "refused") return null;
  if (power.basis === "clamp" && reading.currentA !== null) return reading.currentA;
  const element = settingLoad(reading.kind, reading.settingName) === "element";
  const powerFactor = element ? 1 : (reading.powerFactor ?? deviceClass?.powerFactor.low ?? 1);
  return power.powerW.value / ((reading.voltageV ?? nominalVoltageV) * powerFactor);
}
