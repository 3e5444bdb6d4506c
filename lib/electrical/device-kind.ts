export const DEVICE_KINDS = ["space-heater", "personal-fan"] as const;
export type DeviceKind = (typeof DEVICE_KINDS)[number];

/** How a setting's power is known, in order of trust. */
export const POWER_BASES = ["plug-meter", "clamp", "nameplate", "class-default"] as const;
export type PowerBasis = (typeof POWER_BASES)[number];

export const SETTING_NAMES = [
  "off",
  "fan-only",
  "low-heat",
  "medium-heat",
  "high-heat",
  "low-speed",
  "high-speed",
] as const;
export type SettingName = (typeof SETTING_NAMES)[number];

const LABELS: Record<SettingName, string> = {
  off: "off",
  "fan-only": "fan only",
  "low-heat": "low heat",
  "medium-heat": "medium heat",
  "high-heat": "high heat",
  "low-speed": "low speed",
  "high-speed": "high speed",
};

/** What the setting draws its current for: a heating element, or a motor or electronics with a power factor below 1. */
export type SettingLoad = "element" | "motor";

/** A heater that only blows, or stands by, is a motor or an adapter and not a heating element. */
export function settingLoad(kind: DeviceKind, settingName: string): SettingLoad {
  if (kind === "personal-fan") return "motor";
  return /^(off|standby|(cool )?fan([ -]only)?|.*speed)$/i.test(settingName.trim()) ? "motor" : "element";
}

/** A setting's name as printed; a name of one's own stays as typed. */
export function settingLabel(settingName: string): string {
  return LABELS[settingName as SettingName] ?? settingName;
}
