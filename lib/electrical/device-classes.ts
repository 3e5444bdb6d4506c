import { DEVICE_CLASS_ROWS } from "./device-class-rows";
import type { DeviceKind, SettingName } from "./device-kind";
import type { ValueRange } from "./value-range";

/** How far a source was followed: read in it, told by another, from memory, or judgement. */
export type SourceConfidence = "published" | "second-hand" | "from-memory" | "judgement";

export type ClassSource = { title: string; year?: string; url?: string; confidence: SourceConfidence };

export type ClassSetting = { name: SettingName; powerW: number; lowW: number; highW: number };

/** A kind of heater or fan with the power its settings usually take: what stands in where nothing was measured. */
export type DeviceClass = {
  id: string;
  label: string;
  kind: DeviceKind;
  /** Touches the body (mat, cushion, throw): the clearance rule for heaters does not apply. */
  isContact: boolean;
  nominalVoltageV: number;
  powerFactor: ValueRange;
  settings: readonly ClassSetting[];
  sources: readonly ClassSource[];
};

/** Every class, heaters first. */
export const DEVICE_CLASSES: readonly DeviceClass[] = DEVICE_CLASS_ROWS;

const byId = new Map(DEVICE_CLASSES.map((each) => [each.id, each]));

export const deviceClassById = (id: string): DeviceClass | null => byId.get(id) ?? null;

export const classSetting = (deviceClass: DeviceClass, settingName: string): ClassSetting | null =>
  deviceClass.settings.find((each) => each.name === settingName) ?? null;

/** The setting that draws most. */
export const topSetting = (deviceClass: DeviceClass): ClassSetting =>
  deviceClass.settings.reduce((top, each) => (each.powerW > top.powerW ? each : top));

const CONFIDENCE_WORDS: Record<SourceConfidence, string> = {
  published: "",
  "second-hand": " (second hand)",
  "from-memory": " (from memory)",
  judgement: " (judgement)",
};

/** The sources of a class in one line, each with how far it was followed. */
export function classSourceText(deviceClass: DeviceClass): string {
  return deviceClass.sources
    .map((each) => `${each.title}${each.year ? `, ${each.year}` : ""}${CONFIDENCE_WORDS[each.confidence]}`)
    .join("; ");
}
