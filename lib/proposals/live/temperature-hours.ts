import type { LiveState } from "../live-building";

/** Width of the hours above the highest temperature counted [K]: common practice, no source. */
const HIGH_TAIL_K = 1.5;

/**
 * Hours of a state with zone air below a temperature [h]: straight lines between the counted temperatures, and even tails
 * beyond, the lower one as deep as its degree-hours say. `riseK` moves all of the state's hours up.
 */
export function hoursBelow(state: LiveState, tempsC: readonly number[], airTempC: number, riseK = 0): number {
  const { hours, hoursBelow: counted } = state;
  const at = airTempC - riseK;
  const first = tempsC[0] as number;
  const last = tempsC.at(-1) as number;
  if (at <= first) {
    const widthK = Math.max(0.1, 2 * state.lowTailK);
    return Math.max(0, 1 - (first - at) / widthK) * (counted[0] as number);
  }
  if (at >= last) {
    const below = counted.at(-1) as number;
    return below + Math.min(1, (at - last) / HIGH_TAIL_K) * (hours - below);
  }
  const k = tempsC.findIndex((each) => each >= at);
  const [from, to] = [tempsC[k - 1] as number, tempsC[k] as number];
  const [less, more] = [counted[k - 1] as number, counted[k] as number];
  return less + ((at - from) / (to - from)) * (more - less);
}

/** Step of the sum for degree-hours [K]: the counts are straight between half kelvins, so that this is fine enough. */
const STEP_K = 0.1;

/** Degree-hours of a state below a temperature [K·h], by adding up its hours below from 10 K under it. */
export function degreeHoursBelow(state: LiveState, tempsC: readonly number[], airTempC: number, riseK = 0): number {
  if (state.hours === 0) return 0;
  let sum = 0;
  for (let depthK = STEP_K / 2; depthK < 10; depthK += STEP_K) {
    const hours = hoursBelow(state, tempsC, airTempC - depthK, riseK);
    if (hours === 0) break;
    sum += hours * STEP_K;
  }
  return sum;
}
