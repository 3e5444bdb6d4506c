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
  let k = 1;
  while ((tempsC[k] as number) < at) k++;
  const [from, to] = [tempsC[k - 1] as number, tempsC[k] as number];
  const [less, more] = [counted[k - 1] as number, counted[k] as number];
  return less + ((at - from) / (to - from)) * (more - less);
}

/** The same when only a share of the state's hours is moved up. */
export const hoursBelowAfter = (
  state: LiveState,
  tempsC: readonly number[],
  airTempC: number,
  { riseK, share }: { riseK: number; share: number },
): number =>
  riseK === 0 || share === 0
    ? hoursBelow(state, tempsC, airTempC)
    : share * hoursBelow(state, tempsC, airTempC, riseK) + (1 - share) * hoursBelow(state, tempsC, airTempC);

/** Degree-hours of a state below a temperature [K·h]: the area under its hours below, which are straight between knots. */
export function degreeHoursBelow(state: LiveState, tempsC: readonly number[], airTempC: number, riseK = 0): number {
  if (state.hours === 0) return 0;
  const at = airTempC - riseK;
  const first = tempsC[0] as number;
  let fromC = first - Math.max(0.1, 2 * state.lowTailK);
  let from = 0;
  let area = 0;
  for (let k = 0; k <= tempsC.length && fromC < at; k++) {
    const toC = Math.min(at, tempsC[k] ?? at);
    const to = hoursBelow(state, tempsC, toC);
    area += ((from + to) / 2) * (toC - fromC);
    fromC = toC;
    from = to;
  }
  return area;
}
