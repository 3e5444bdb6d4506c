import type { PostedValues } from "@/app/_server/form-fields";
import { settingCount, settingField } from "./form";

/** What a button of the sheet asks for besides saving. */
export const ADD_SETTING = "add-setting";
export const SHOW_FIGURES = "show-figures";
export const removeSetting = (index: number): string => `remove-setting-${index}`;

/** Fields of a setting that the next one most likely shares: the meter in the hand, and the supply. */
const CARRIED_ON = [
  "meterName",
  "meterAccuracyPct",
  "meterAccuracyCounts",
  "isTrueRms",
  "currentResolutionA",
  "voltageV",
];

/**
 * The sheet as a button leaves it, nothing saved: with a setting more, with one less, or as it is. Null for a button that saves.
 */
export function sheetAfter(values: PostedValues, intent: string): PostedValues | null {
  if (intent === SHOW_FIGURES) return values;
  if (intent === ADD_SETTING) return withSetting(values, (values.newSetting || values.newSettingName || "").trim());
  const removed = /^remove-setting-(\d+)$/.exec(intent);
  return removed ? withoutSetting(values, Number(removed[1])) : null;
}

function withSetting(values: PostedValues, name: string): PostedValues {
  const index = settingCount(values);
  if (name === "" || index >= 12) return values;
  const carried = Object.fromEntries(
    CARRIED_ON.flatMap((field) => {
      const before = values[settingField(index - 1, field)];
      return before === undefined ? [] : [[settingField(index, field), before]];
    }),
  );
  return {
    ...values,
    ...carried,
    [settingField(index, "name")]: name,
    [settingField(index, "basis")]: "class-default",
    [settingField(index, "hoursPerYear")]: "0",
    [settingField(index, "dutyFraction")]: "1",
    settingCount: String(index + 1),
    newSetting: "",
    newSettingName: "",
    revision: nextRevision(values),
  };
}

function withoutSetting(values: PostedValues, gone: number): PostedValues {
  const count = settingCount(values);
  if (gone < 0 || gone >= count || count <= 1) return values;
  const kept: PostedValues = { settingCount: String(count - 1), revision: nextRevision(values) };
  for (const [key, value] of Object.entries(values)) {
    const setting = /^settings\.(\d+)\.(.+)$/.exec(key);
    if (!setting) kept[key] ??= value;
    else if (Number(setting[1]) !== gone) {
      const index = Number(setting[1]) - (Number(setting[1]) > gone ? 1 : 0);
      kept[settingField(index, setting[2] ?? "")] = value;
    }
  }
  return kept;
}

const nextRevision = (values: PostedValues): string => String(Number(values.revision ?? 0) + 1);
