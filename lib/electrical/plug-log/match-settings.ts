import type { PlugState } from "./plug-log-figures";
import type { LevelFigures } from "./state-figures";

/** A setting of the register with its watts on record and how they are known. */
export type RecordedSetting = { name: string; onRecordW: number; basis: string };

/** A level is a setting's when it lies within this share of it, or within this many watts of a small one. */
const MATCH_SHARE = 0.25;
const MATCH_W = 2;
/** A level that is this far from its setting is worth a finding: the band of a heater in order is -10 to +5 %. */
export const DIFFERS_SHARE = 0.1;

/**
 * Gives each level the setting of the register whose watts are nearest, each setting once, the closest pairs first. A
 * level that is off or standby takes the setting named off.
 */
export function matchSettings(levels: readonly LevelFigures[], settings: readonly RecordedSetting[]): PlugState[] {
  const taken = new Set<string>();
  const settingOf = new Map<number, RecordedSetting>();
  const pairs = levels.flatMap((level, at) =>
    settings.flatMap((setting) => {
      const awayW = Math.abs(level.powerW - setting.onRecordW);
      const isNear = awayW <= Math.max(MATCH_W, MATCH_SHARE * setting.onRecordW);
      return isNear && level.hours > 0 ? [{ at, setting, away: awayW / Math.max(MATCH_W, setting.onRecordW) }] : [];
    }),
  );
  for (const { at, setting } of pairs.sort((a, b) => a.away - b.away || a.at - b.at)) {
    if (settingOf.has(at) || taken.has(setting.name)) continue;
    settingOf.set(at, setting);
    taken.add(setting.name);
  }
  return levels.map((level, at) => ({ ...level, setting: settingOf.get(at) ?? null }));
}
