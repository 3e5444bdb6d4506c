import { NOT_LOGGED } from "./level-states";
import type { PlugSeries } from "./plug-series";

/** Consecutive readings at one level: level, first instant and end [UTC seconds], time held [s], energy [J]. */
export type StateRun = { state: number; fromUtc: number; toUtc: number; seconds: number; joules: number };

/** Runs of a log in order; a gap ends a run, and stands in the list as nothing. */
export function stateRuns(series: PlugSeries, states: Uint8Array): StateRun[] {
  const { tsUtcSeconds, powerW, holdSeconds } = series;
  const runs: StateRun[] = [];
  let run: StateRun | undefined;
  for (let i = 0; i < states.length; i++) {
    const state = states[i] as number;
    if (state === NOT_LOGGED) {
      run = undefined;
      continue;
    }
    const at = tsUtcSeconds[i] as number;
    const held = holdSeconds[i] as number;
    const current: StateRun = run?.state === state ? run : { state, fromUtc: at, toUtc: at, seconds: 0, joules: 0 };
    if (current !== run) runs.push(current);
    current.toUtc = at + held;
    current.seconds += held;
    current.joules += (powerW[i] as number) * held;
    run = current;
  }
  return runs;
}
