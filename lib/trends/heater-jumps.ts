import type { GroupedZone } from "./group-offsets";
import { medianInPlace } from "./median-in-place";
import { type SeenSpan, SignTally } from "./seen-span";

/** A rise of the reading within half an hour that a zone's own air hardly makes [K] (reference D7, row 1: more than 1 K). */
export const JUMP_K = 1;
const JUMP_SECONDS = 1800;
/** Occupied time before a jump, so that the start of the day is over [s]. Judgement, no source. */
const SETTLED_SECONDS = 3600;
/** The half hour before a jump must rise by less than this: a room that warms up rises steadily [K]. Judgement, no source. */
const FLAT_BEFORE_K = 0.3;
/** The other zones' median must rise less than this at the same time: else it is sun or the air handler [K]. Judgement, no source. */
const OTHERS_STILL_K = 0.3;
const LEAST_OTHERS = 3;
/** Airflow after a jump over that before it from which it counts as answered by cooling. Judgement, no source. */
const ANSWERED_FACTOR = 1.1;
const HOUR_SECONDS = 3600;
/** Power from which a heater counts as on, as a share of its usual high reading (reference A3). */
const ON_FRACTION = 0.1;

/** A zone among its neighbours, with its season and what its heaters take. */
export type HeatedZone = GroupedZone & {
  /** `coolingSeasonMask` of the zone. */
  season: Uint8Array;
  /** What the zone's heaters take by their own meters, together [W]; null where none has one. */
  heaterPowerW: Float64Array | null;
};

/** Sudden rises of a zone's reading that only its heaters explain, and how the box answered them. Means are over the answered ones. */
export type HeaterJumps = {
  /** `own-readings`: at the starts that a heater's own meter shows; `trend`: wherever the reading jumps. */
  source: "own-readings" | "trend";
  /** Starts or jumps that could be judged; those after which the reading was up and the box gave more air. */
  events: number;
  answered: number;
  meanRiseK: number;
  meanAirflowBeforeM3ps: number;
  meanAirflowAfterM3ps: number;
  seen: SeenSpan;
};

/**
 * Jumps of each zone's reading in occupied cooling-season hours, by zone id (reference D7, row 1). With a heater's own readings
 * every start is looked at; without, every rise of 1 K within half an hour, out of the flat, that the other zones do not
 * share. A jump counts as answered when the mean airflow of the hour after it is a tenth above that of the half hour before.
 * Zones without any are left out.
 */
export function heaterJumps(zones: readonly HeatedZone[], weekHours: Uint8Array): Map<number, HeaterJumps> {
  const found = new Map<number, HeaterJumps>();
  for (const zone of zones) {
    const { grids, heaterPowerW } = zone;
    if (!grids.airflowM3ps) continue;
    const starts = heaterPowerW ? startsOf(heaterPowerW) : null;
    const others = zones.filter((each) => each !== zone && each.grids.grid.count === grids.grid.count);
    const jumps = judged(zone, weekHours, starts, others);
    if (jumps) found.set(zone.zoneId, jumps);
  }
  return found;
}

/** Intervals in which a heater that was off comes on. */
function startsOf(powerW: Float64Array): Uint8Array {
  const known = powerW.filter((each) => each > 0).sort();
  const high = known[Math.floor(0.95 * known.length)] ?? Number.POSITIVE_INFINITY;
  return Uint8Array.from(powerW, (each, i) =>
    i > 0 && each > ON_FRACTION * high && (powerW[i - 1] as number) <= ON_FRACTION * high ? 1 : 0,
  );
}

function judged(
  zone: HeatedZone,
  weekHours: Uint8Array,
  starts: Uint8Array | null,
  others: readonly GroupedZone[],
): HeaterJumps | null {
  const { grid, zoneAirTempC, occupied } = zone.grids;
  const { season } = zone;
  const airflow = zone.grids.airflowM3ps as Float64Array;
  const reach = Math.max(1, Math.round(JUMP_SECONDS / grid.stepSeconds));
  const hour = Math.max(1, Math.round(HOUR_SECONDS / grid.stepSeconds));
  const settled = Math.ceil(SETTLED_SECONDS / grid.stepSeconds);
  const riseOf = ({ grids }: GroupedZone, i: number): number => riseWithin(grids.zoneAirTempC, i, reach);
  const tally = new SignTally();
  const sums = { rise: 0, before: 0, after: 0 };
  let events = 0;
  let occupiedRun = 0;
  let quietUntil = 0;
  for (let i = reach; i + reach + hour < grid.count; i++) {
    occupiedRun = occupied[i] === 1 ? occupiedRun + 1 : 0;
    if (occupiedRun <= settled || season[i] !== 1 || i < quietUntil || occupied[i + reach + hour] !== 1) continue;
    // A start in interval i warms from then on: the last reading before it is the one to compare with.
    const from = starts ? i - 1 : i;
    if (starts ? starts[i] !== 1 : !(riseOf(zone, i) >= JUMP_K && wasFlat(zoneAirTempC, i, reach))) continue;
    const rise = riseWithin(zoneAirTempC, from, reach);
    const before = meanOf(airflow, from - reach + 1, from + 1);
    const after = meanOf(airflow, from + reach, from + reach + hour);
    if (Number.isNaN(rise + before + after)) continue;
    const rises = others.map((each) => riseOf(each, from)).filter((each) => !Number.isNaN(each));
    if (!starts && (rises.length < LEAST_OTHERS || medianInPlace(Float64Array.from(rises)) >= OTHERS_STILL_K)) continue;
    events++;
    quietUntil = i + reach + hour;
    if (!(rise >= JUMP_K) || !(after > ANSWERED_FACTOR * before)) continue;
    tally.add(i, weekHours[i] as number);
    sums.rise += rise;
    sums.before += before;
    sums.after += after;
  }
  const seen = tally.span(grid);
  return seen
    ? {
        source: starts ? "own-readings" : "trend",
        events,
        answered: tally.count,
        meanRiseK: sums.rise / tally.count,
        meanAirflowBeforeM3ps: sums.before / tally.count,
        meanAirflowAfterM3ps: sums.after / tally.count,
        seen,
      }
    : null;
}

/** Highest of the next `reach` values less the one at `i`: a box that answers pulls the reading down again within the hour. */
function riseWithin(values: Float64Array, i: number, reach: number): number {
  let highest = values[i + 1] as number;
  for (let k = 2; k <= reach; k++) highest = Math.max(highest, values[i + k] as number);
  return highest - (values[i] as number);
}

const wasFlat = (values: Float64Array, i: number, reach: number): boolean =>
  Math.abs((values[i] as number) - (values[i - reach] as number)) < FLAT_BEFORE_K;

function meanOf(values: Float64Array, from: number, until: number): number {
  let sum = 0;
  for (let i = Math.max(0, from); i < until; i++) sum += values[i] as number;
  return sum / (until - Math.max(0, from));
}
