import { median } from "@/lib/statistics/quantile";

/** Power from each instant to the next, for as long as it is held: 0 s where a gap follows [UTC seconds, W, s]. */
export type PlugSeries = {
  tsUtcSeconds: Float64Array;
  powerW: Float64Array;
  holdSeconds: Float64Array;
  usualStepSeconds: number;
  longestHoldSeconds: number;
};

/** A reading is held for at most a minute, or three usual steps where readings come more slowly [s]. */
const SHORTEST_LIMIT_SECONDS = 60;
const STEPS_HELD = 3;

/**
 * Holds each reading until the next. A step over 60 s, and over three usual steps, is a gap: its reading is held for no
 * time. The last reading stands for the usual step. A power that is no number stands for nothing.
 */
export function heldSeries(tsUtcSeconds: Float64Array, powerW: Float64Array): PlugSeries {
  const count = tsUtcSeconds.length;
  const steps = Float64Array.from({ length: Math.max(0, count - 1) }, (_, i) => step(tsUtcSeconds, i));
  const usualStepSeconds = steps.length === 0 ? 0 : median(steps);
  const longestHoldSeconds = Math.max(SHORTEST_LIMIT_SECONDS, STEPS_HELD * usualStepSeconds);
  const holdSeconds = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const seconds = i + 1 < count ? (steps[i] as number) : usualStepSeconds;
    if (!Number.isNaN(powerW[i] as number) && seconds <= longestHoldSeconds) holdSeconds[i] = seconds;
  }
  return { tsUtcSeconds, powerW, holdSeconds, usualStepSeconds, longestHoldSeconds };
}

const step = (ts: Float64Array, i: number): number => (ts[i + 1] as number) - (ts[i] as number);

/** Energy [kWh] and the time that readings stand for [h]: E = Σ P·Δt / 3.6e6. */
export function seriesTotals({ tsUtcSeconds, powerW, holdSeconds }: PlugSeries) {
  let [joules, seconds, highestPowerW, gaps] = [0, 0, 0, 0];
  for (let i = 0; i < powerW.length; i++) {
    const held = holdSeconds[i] as number;
    if (held === 0) {
      if (i + 1 < powerW.length && step(tsUtcSeconds, i) > 0) gaps += 1;
      continue;
    }
    const power = powerW[i] as number;
    joules += power * held;
    seconds += held;
    if (power > highestPowerW) highestPowerW = power;
  }
  const last = tsUtcSeconds.length - 1;
  const span =
    last < 0 ? 0 : (tsUtcSeconds[last] as number) - (tsUtcSeconds[0] as number) + (holdSeconds[last] as number);
  return {
    energyKwh: joules / 3.6e6,
    loggedHours: seconds / 3600,
    gapHours: Math.max(0, span - seconds) / 3600,
    gaps,
    highestPowerW,
    meanPowerW: seconds === 0 ? 0 : joules / seconds,
  };
}
