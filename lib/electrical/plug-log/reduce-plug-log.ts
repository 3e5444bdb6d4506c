import type { Finding } from "@/lib/findings/finding";
import type { OccupiedHours } from "@/lib/time/occupied-hours";
import type { ZoneTable } from "@/lib/time/zone-table";
import { LEAST_LOGGED_DAYS } from "../logged-days";
import type { PlugFindingCode } from "./findings";
import { levelStates } from "./level-states";
import { isWhole, logByDay } from "./log-days";
import { DIFFERS_SHARE, matchSettings, type RecordedSetting } from "./match-settings";
import type { PlugLogFigures, PlugState } from "./plug-log-figures";
import { heldSeries, seriesTotals } from "./plug-series";
import { offLimitW, powerLevels } from "./power-levels";
import { levelFigures } from "./state-figures";
import { stateRuns } from "./state-runs";

/** A load counts as continuous for its circuit from this long at its maximum (NEC Art. 100, from memory) [h]. */
const CONTINUOUS_HOURS = 3;
/** Readings further apart than this are means over cycles of a thermostat [s]. */
const COARSE_SECONDS = 5 * 60;

type Reduced = Omit<PlugLogFigures, "unit" | "quantity" | "rows" | "readFindings" | "notes">;

/**
 * A plug log's readings reduced to what the register keeps of them: energy, hours by level, duty, longest run, use outside
 * occupied hours, days and a profile of the day. Needs two readings.
 */
export function reducePlugLog(
  readings: { tsUtcSeconds: Float64Array; powerW: Float64Array },
  site: { occupiedHours: OccupiedHours; zone: ZoneTable; settings: readonly RecordedSetting[] },
): Reduced {
  const series = heldSeries(readings.tsUtcSeconds, readings.powerW);
  const totals = seriesTotals(series);
  const levels = powerLevels(series);
  const states = levelStates(series, levels);
  const runs = stateRuns(series, states);
  const offLimit = offLimitW(levels);
  const isOnState = levels.map((level) => level.powerW > offLimit);
  const byDay = logByDay(series, (at) => isOnState[states[at] as number] === true, site.occupiedHours, site.zone);
  const found = matchSettings(levelFigures(levels, runs), site.settings);
  const highest = isOnState.lastIndexOf(true);
  const full = runs.filter((run) => run.state === highest).sort((a, b) => b.seconds - a.seconds)[0];
  const figures = {
    ...totals,
    usualStepSeconds: series.usualStepSeconds,
    longestHoldSeconds: series.longestHoldSeconds,
    states: found,
    longestFullRun: full ? { hours: full.seconds / 3600, fromMs: full.fromUtc * 1000 } : null,
    ...byDay,
  };
  return { ...figures, findings: findingsOf(figures, offLimit) };
}

function findingsOf(figures: Omit<Reduced, "findings">, offLimitPowerW: number): Finding<PlugFindingCode>[] {
  const found: Finding<PlugFindingCode>[] = [];
  const add = (code: PlugFindingCode, severity: Finding["severity"], evidence: Finding["evidence"]): void =>
    void found.push({ code, severity, evidence });
  const { gapHours, gaps, longestFullRun, outsideOccupied, days, usualStepSeconds } = figures;
  if (gaps > 0) add("gaps-in-log", "caution", { hours: gapHours, gaps });
  if (usualStepSeconds > COARSE_SECONDS) add("levels-from-means", "caution", { stepMinutes: usualStepSeconds / 60 });
  const on = figures.states.filter((state) => state.powerW > offLimitPowerW && state.hours > 0);
  if (on.length === 0) add("never-on", "note", {});
  for (const state of on) addSettingFinding(state, add);
  if (outsideOccupied.hours > 0) add("runs-outside-occupied", "caution", { hours: outsideOccupied.hours });
  if (longestFullRun && longestFullRun.hours >= CONTINUOUS_HOURS)
    add("runs-three-hours", "caution", { hours: longestFullRun.hours });
  const whole = days.filter(isWhole).length;
  if (whole < LEAST_LOGGED_DAYS) add("short-log", "note", { days: whole });
  return found;
}

type Add = (code: PlugFindingCode, severity: Finding["severity"], evidence: Finding["evidence"]) => void;

function addSettingFinding({ powerW, setting }: PlugState, add: Add): void {
  if (!setting) {
    add("level-not-on-record", "note", { powerW });
    return;
  }
  const away = Math.abs(powerW - setting.onRecordW) / setting.onRecordW;
  if (away > DIFFERS_SHARE)
    add("level-differs", "caution", { powerW, onRecordW: setting.onRecordW, setting: setting.name });
}
