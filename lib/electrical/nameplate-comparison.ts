import { type DeviceClass, topSetting } from "./device-classes";
import { settingLoad } from "./device-kind";
import { compareWithNameplate } from "./nameplate-band";
import type { ElectricalFinding, SettingPowerOk, SettingReading } from "./setting-reading";

/** Below this share of the nameplate the currents of both conductors cancel in the jaws, or nothing was on. */
const NEAR_ZERO = 0.05;
/** Ratios that a ×10 loop leaves behind when its turns were not put down, or put down where there were none. */
const TEN_TIMES = { low: 8, high: 12 } as const;

/**
 * Asks what is wrong with a reading that lies outside of what the nameplate allows at the voltage of the reading (V² of a heating
 * element; band of IEC 60335-1, from memory). Null where there is no nameplate to hold it against, or no heating element.
 */
export function nameplateComparison(
  power: SettingPowerOk,
  reading: SettingReading,
  deviceClass: DeviceClass | null,
): ElectricalFinding[] | null {
  const nameplateW = reading.nameplateW ?? null;
  if (nameplateW === null || nameplateW === 0 || (power.basis !== "clamp" && power.basis !== "plug-meter")) return null;
  if (settingLoad(reading.kind, reading.settingName) !== "element") return null;
  const ratedV = reading.ratedVoltageV ?? deviceClass?.nominalVoltageV ?? null;
  if (ratedV === null) return null;
  const voltageV = reading.voltageV ?? ratedV;
  const measuredW = power.powerW.value;
  const { expectedW, ratio, plausible } = compareWithNameplate({ measuredW, voltageV, nameplateW, nameplateV: ratedV });
  if (plausible) return [];
  const evidence = { powerW: measuredW, expectedW, ratio, voltageV, nameplateW };
  return [{ code: codeOf(ratio, reading), severity: "caution", evidence }];
}

function codeOf(ratio: number, reading: SettingReading): ElectricalFinding["code"] {
  const viaClamp = reading.basis === "clamp";
  if (ratio < NEAR_ZERO) return "reading-implausibly-low";
  if (viaClamp && reading.clampTurns !== 10 && ratio >= TEN_TIMES.low && ratio <= TEN_TIMES.high)
    return "reading-ten-times";
  if (viaClamp && reading.clampTurns === 10 && 1 / ratio >= TEN_TIMES.low && 1 / ratio <= TEN_TIMES.high)
    return "reading-a-tenth";
  return ratio < 1 ? "below-nameplate" : "above-nameplate";
}

/** The nameplate's watts for a setting: its own, or the device's where the setting is the highest of its class. */
export function nameplateOfSetting(
  setting: { name: string; nameplateW?: number | null },
  device: { nameplateW?: number | null; deviceClass: DeviceClass | null },
): number | null {
  if ((setting.nameplateW ?? null) !== null) return setting.nameplateW ?? null;
  const isTop = device.deviceClass !== null && topSetting(device.deviceClass).name === setting.name;
  return isTop ? (device.nameplateW ?? null) : null;
}
