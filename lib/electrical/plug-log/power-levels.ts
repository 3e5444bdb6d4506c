import type { PlugSeries } from "./plug-series";

/** A level of power at which a load stays: its mean and the range between the valleys beside it [W]. */
export type PowerLevel = { powerW: number; fromW: number; toW: number; hours: number };

/** Below this nothing is drawn, whatever the load: the last digit of a logger. */
const OFF_BELOW_W = 0.5;
/** Standby of heaters and fans lies at or below this [W] (0 to 3 W, judgement). */
const STANDBY_W = 3;
/** Bins are 1 % wide at high power and 0.1 W at low: asinh(P / 10 W) is even in both. */
const SCALE_W = 10;
const BIN = 0.01;
/** Half width of the smoothing: about ± 6 % of power, the spread of one setting with the mains voltage. */
const SMOOTHING_BINS = 6;
/** A valley between two levels falls below this share of the lower one, else they are one. */
const VALLEY = 0.5;
/** A level holds this much of the time above standby, and a minute at least. */
const LEAST_SHARE = 0.01;
const LEAST_SECONDS = 60;
const MOST_LEVELS = 8;

const binOf = (powerW: number): number => Math.floor(Math.asinh(powerW / SCALE_W) / BIN);
const powerOf = (bin: number): number => SCALE_W * Math.sinh(bin * BIN);

/**
 * Levels of power of a log from off upwards: the peaks of the time spent by power, parted at the valleys between them. Off
 * is always the first, also when the load was never off.
 */
export function powerLevels(series: PlugSeries): PowerLevel[] {
  const { powerW, holdSeconds } = series;
  let highest = 0;
  for (let i = 0; i < powerW.length; i++) {
    if ((holdSeconds[i] as number) > 0) highest = Math.max(highest, powerW[i] as number);
  }
  const bins = new Float64Array(binOf(highest) + 2 * SMOOTHING_BINS + 2);
  const firstOn = binOf(OFF_BELOW_W) + 1;
  const standbyW = offLimitW([{ powerW: highest }]);
  let onSeconds = 0;
  for (let i = 0; i < powerW.length; i++) {
    const power = powerW[i] as number;
    const held = holdSeconds[i] as number;
    if (!(held > 0) || power < OFF_BELOW_W) continue;
    bins[Math.max(firstOn, binOf(power))] = (bins[Math.max(firstOn, binOf(power))] as number) + held;
    if (power > standbyW) onSeconds += held;
  }
  const edges = [0, OFF_BELOW_W];
  if (highest >= OFF_BELOW_W) edges.push(...valleysOf(smoothed(bins), firstOn).map(powerOf), Number.POSITIVE_INFINITY);
  const least = Math.max(LEAST_SECONDS, LEAST_SHARE * onSeconds);
  return heldLevels(series, withoutStandby(series, withoutThin(series, edges, least)));
}

/** The level up to which a load counts as off: its standby, and never more than half of what it draws at its highest. */
export function offLimitW(levels: readonly Pick<PowerLevel, "powerW">[]): number {
  const highest = Math.max(0, ...levels.map((level) => level.powerW));
  return Math.min(STANDBY_W, highest / 2);
}

/** Standby is off: its level joins the first one. */
function withoutStandby(series: PlugSeries, edges: number[]): number[] {
  const levels = heldLevels(series, edges);
  const limit = offLimitW(levels);
  const firstOn = levels.findIndex((level) => level.hours > 0 && level.powerW > limit);
  return firstOn < 1 ? edges : [0, ...edges.slice(firstOn)];
}

function smoothed(bins: Float64Array): Float64Array {
  const result = new Float64Array(bins.length);
  for (let at = 0; at < bins.length; at++) {
    let sum = 0;
    for (let off = -SMOOTHING_BINS; off <= SMOOTHING_BINS; off++) {
      sum += (bins[at + off] ?? 0) * (1 - Math.abs(off) / (SMOOTHING_BINS + 1));
    }
    result[at] = sum;
  }
  return result;
}

/** Bins of the valleys between peaks that stand apart. */
function valleysOf(density: Float64Array, from: number): number[] {
  const valleys: number[] = [];
  let peak = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let lowestAt = from;
  for (let at = from; at < density.length; at++) {
    const value = density[at] as number;
    if (value < lowest) [lowest, lowestAt] = [value, at];
    if (value * VALLEY > lowest && peak * VALLEY > lowest) {
      valleys.push(lowestAt);
      [peak, lowest] = [value, value];
      lowestAt = at;
    } else if (value > peak) {
      [peak, lowest] = [value, value];
      lowestAt = at;
    }
  }
  return valleys;
}

/** Joins levels that hold too little time, and the thinnest ones when there are too many, to the neighbour above or below. */
function withoutThin(series: PlugSeries, edges: number[], leastSeconds: number): number[] {
  const kept = [...edges];
  for (;;) {
    const hours = heldLevels(series, kept).map((level) => level.hours);
    const thin = hours.flatMap((each, at) => (at > 0 && each * 3600 < leastSeconds ? [{ each, at }] : []));
    const surplus = hours.length > MOST_LEVELS ? hours.flatMap((each, at) => (at > 0 ? [{ each, at }] : [])) : [];
    const [worst] = [...thin, ...surplus].sort((a, b) => a.each - b.each);
    if (!worst || hours.length <= 2) return kept;
    // The border towards the nearer level goes: the one above, unless this is the highest.
    kept.splice(worst.at + 1 < kept.length - 1 ? worst.at + 1 : worst.at, 1);
  }
}

function heldLevels({ powerW, holdSeconds }: PlugSeries, edges: readonly number[]): PowerLevel[] {
  const sums = edges.slice(1).map(() => ({ joules: 0, seconds: 0 }));
  for (let i = 0; i < powerW.length; i++) {
    const held = holdSeconds[i] as number;
    if (!(held > 0)) continue;
    const power = powerW[i] as number;
    let level = 0;
    while (level + 1 < sums.length && power >= (edges[level + 1] as number)) level += 1;
    const sum = sums[level] as { joules: number; seconds: number };
    sum.joules += power * held;
    sum.seconds += held;
  }
  return sums.map(({ joules, seconds }, at) => ({
    powerW: seconds === 0 ? 0 : joules / seconds,
    fromW: edges[at] as number,
    toW: edges[at + 1] as number,
    hours: seconds / 3600,
  }));
}
