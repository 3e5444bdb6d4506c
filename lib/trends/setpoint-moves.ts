import { median } from "@/lib/statistics/quantile";

/** The occupied median of a setpoint on one day. */
export type SetpointDay = { firstUtcSeconds: number; median: number };

/** An active setpoint that moved and stayed: the first occupied second of the first day at the new value. */
export type SetpointMove = { atUtcSeconds: number; fromC: number; toC: number };

/** A move from here on counts [K]: trials go in steps of half a kelvin, trimming is finer. Common practice, no source. */
export const LEAST_MOVE_K = 0.4;
/** Days that must stand at a value before it counts as one. */
const LASTING_DAYS = 3;

/**
 * Moves of a setpoint by the medians of its occupied days. A value counts when it stands for three days; a day or two at
 * another one is an override that somebody took back, and no move.
 */
export function setpointMoves(days: readonly SetpointDay[]): SetpointMove[] {
  const moves: SetpointMove[] = [];
  let level: number[] = days.slice(0, LASTING_DAYS).map((each) => each.median);
  for (let k = LASTING_DAYS; k < days.length; k++) {
    const fromC = median(level);
    const next = days.slice(k, k + LASTING_DAYS).map((each) => each.median);
    const toC = median(next);
    const stays =
      next.length === LASTING_DAYS &&
      next.every((each) => Math.abs(each - fromC) >= LEAST_MOVE_K && Math.abs(each - toC) < LEAST_MOVE_K) &&
      next.every((each) => Math.sign(each - fromC) === Math.sign(toC - fromC));
    if (stays) {
      moves.push({ atUtcSeconds: (days[k] as SetpointDay).firstUtcSeconds, fromC, toC });
      level = next;
      k += LASTING_DAYS - 1;
    } else if (Math.abs((days[k] as SetpointDay).median - fromC) < LEAST_MOVE_K) {
      level = [...level, (days[k] as SetpointDay).median].slice(-2 * LASTING_DAYS);
    }
  }
  return moves;
}

/** The first move after a change that takes most of it back: at least half of the way; null while it stands. */
export function driftBack(change: SetpointMove, moves: readonly SetpointMove[]): SetpointMove | null {
  const back = (value: number): number => (change.toC - value) / (change.toC - change.fromC);
  return moves.find((each) => each.atUtcSeconds > change.atUtcSeconds && back(each.toC) >= 0.5) ?? null;
}
