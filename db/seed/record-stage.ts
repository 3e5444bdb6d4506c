import type { DemoCalendar } from "./demo-calendar";
import type { PointName, RecordedTrend } from "./record-trend";
import { canBeRecorded } from "./trend-defects";

/** A controller that is back on its network, and every controller once a day, reports a state again. */
const DAILY_SECONDS = 86_400;

/** Samples of an on-off state as it changes; `states` has one value a substep. */
export function recordStage(
  point: PointName,
  states: Uint8Array,
  substepSeconds: number,
  calendar: DemoCalendar,
): RecordedTrend {
  const ts: number[] = [];
  const v: number[] = [];
  let told = -1;
  for (let k = 0; k < states.length; k++) {
    const at = calendar.span.startUtcSeconds + k * substepSeconds;
    if (!canBeRecorded(point.zoneCode, at)) {
      told = -1;
      continue;
    }
    const state = states[k] as number;
    if (state === told && at - (ts.at(-1) ?? 0) < DAILY_SECONDS) continue;
    told = state;
    ts.push(at);
    v.push(state);
  }
  return {
    ...point,
    fileUnit: "state",
    sampling: "change-of-value",
    ts: Float64Array.from(ts),
    v: Int32Array.from(v),
    decimals: 0,
  };
}
