import type { SettingReading } from "@/lib/electrical/setting-reading";

/** A heater's high heat read with a clamp at a nominal 120 V, unless told otherwise. */
export function clampReading(given: Partial<SettingReading>): SettingReading {
  return {
    kind: "space-heater",
    settingName: "high-heat",
    basis: "clamp",
    currentA: 12.1,
    currentResolutionA: 0.01,
    voltageV: 120,
    voltageMeasured: false,
    powerFactor: null,
    powerW: null,
    ...given,
  };
}
