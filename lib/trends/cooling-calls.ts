import type { Grid } from "./grid";

/**
 * Longest pause of a cooling stage that still belongs to a cycle [s]: a thermostat that holds a zone starts its compressor once
 * an hour at least (3 starts an hour at half load are usual for room units). Judgement, no source.
 */
const LONGEST_PAUSE_SECONDS = 3600;

/** Of one interval of a unit that serves its zone alone: 1 in a cycle of cooling, 0 idle, NaN unknown. */
export const IN_CYCLE = 1;
export const IDLE = 0;

/**
 * Which intervals a single-zone unit's cooling stage controls. Reference D2 takes every interval with the stage off for the
 * deadband; but between two starts it is off because the setpoint is met, so the pauses of a cycle are held by the setpoint
 * as its runs are. An interval is idle when the stage has not run for an hour before it or does not run for an hour after it.
 */
export function coolingCalls(grid: Grid, stage: Float64Array): Float64Array {
  const reach = Math.floor(LONGEST_PAUSE_SECONDS / grid.stepSeconds);
  const calls = new Float64Array(stage.length);
  let lastOn = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < stage.length; i++) {
    const share = stage[i] as number;
    if (Number.isNaN(share)) {
      calls[i] = Number.NaN;
      lastOn = Number.NEGATIVE_INFINITY;
      continue;
    }
    if (!(share > 0)) continue;
    // The pause before this run belongs to the cycle when it was short enough.
    if (i - lastOn - 1 <= reach) for (let k = lastOn + 1; k < i; k++) calls[k] = IN_CYCLE;
    calls[i] = IN_CYCLE;
    lastOn = i;
  }
  return calls;
}
