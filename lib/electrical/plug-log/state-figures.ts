import type { PlugState } from "./plug-log-figures";
import { offLimitW, type PowerLevel } from "./power-levels";
import type { StateRun } from "./state-runs";

/** Longest pause of a thermostat between two runs of one setting [s]. Judgement: an office heater cycles in minutes. */
export const LONGEST_PAUSE_SECONDS = 30 * 60;
/** A pause is at a level below this share of the setting's power: off, or the fan alone. */
const PAUSE_SHARE = 0.25;
export type LevelFigures = Omit<PlugState, "setting">;

/**
 * Hours, energy, duty and longest run of each level. The time for which a setting was selected is that of its runs and of
 * the pauses between two of them, up to half an hour each, in which the load is nearly off: duty = h_on / h_selected. Such
 * pauses are taken from the level at which they were spent, so that selected hours add up to the hours logged.
 */
export function levelFigures(levels: readonly PowerLevel[], runs: readonly StateRun[]): LevelFigures[] {
  const pausedSeconds = pausesByLevel(levels, runs);
  return levels.map((level, state) => {
    const own = runs.filter((run) => run.state === state);
    const seconds = own.reduce((sum, run) => sum + run.seconds, 0);
    const joules = own.reduce((sum, run) => sum + run.joules, 0);
    const { gained, lost } = pausedSeconds[state] ?? { gained: 0, lost: 0 };
    const selectedHours = (seconds - lost + gained) / 3600;
    const onHours = (seconds - lost) / 3600;
    return {
      powerW: seconds === 0 ? level.powerW : joules / seconds,
      lowW: level.fromW,
      highW: Number.isFinite(level.toW) ? level.toW : Math.max(level.powerW, level.fromW),
      hours: seconds / 3600,
      energyKwh: joules / 3.6e6,
      selectedHours,
      dutyFraction: selectedHours === 0 ? 0 : onHours / selectedHours,
      longestRunHours: own.reduce((longest, run) => Math.max(longest, run.seconds), 0) / 3600,
      runs: own.length,
    };
  });
}

/** Pauses between two runs of one setting: seconds that the setting gains by them, and that the levels of pause lose. */
function pausesByLevel(levels: readonly PowerLevel[], runs: readonly StateRun[]) {
  const paused = levels.map(() => ({ gained: 0, lost: 0 }));
  const offLimit = offLimitW(levels);
  for (let at = 0; at < runs.length; at++) {
    const run = runs[at] as StateRun;
    const power = levels[run.state]?.powerW ?? 0;
    if (power <= offLimit) continue;
    let [seconds, end] = [0, at + 1];
    while (end < runs.length && isPause(runs, end, power, levels) && seconds <= LONGEST_PAUSE_SECONDS) {
      seconds += (runs[end] as StateRun).seconds;
      end += 1;
    }
    const next = runs[end];
    if (end === at + 1 || next?.state !== run.state || seconds > LONGEST_PAUSE_SECONDS) continue;
    if (!follows(runs, end)) continue;
    const own = paused[run.state];
    if (own) own.gained += seconds;
    for (const each of runs.slice(at + 1, end)) {
      const lost = paused[each.state];
      if (lost) lost.lost += each.seconds;
    }
    at = end - 1;
  }
  return paused;
}

const isPause = (runs: readonly StateRun[], at: number, powerW: number, levels: readonly PowerLevel[]): boolean =>
  follows(runs, at) && (levels[(runs[at] as StateRun).state]?.powerW ?? 0) < PAUSE_SHARE * powerW;

/** No gap before this run. */
const follows = (runs: readonly StateRun[], at: number): boolean =>
  Math.abs((runs[at]?.fromUtc ?? 0) - (runs[at - 1]?.toUtc ?? 0)) < 1e-6;
