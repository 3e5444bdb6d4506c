import type { Grid } from "./grid";
import { medianInPlace } from "./median-in-place";
import { type PointSeries, usualStepSeconds } from "./samples";

/** A run shorter than this is too short [min] (reference D7, row 16). */
export const SHORT_RUN_MINUTES = 10;
/** Interval samples further apart than this cannot show a run of ten minutes [s]. */
const FINE_ENOUGH_SECONDS = 300;

/** Runs of a single-zone unit's cooling stage that began in occupied cooling-season hours. */
export type CompressorRuns = {
  runs: number;
  shortRuns: number;
  medianMinutes: number;
  fromUtcSeconds: number;
  toUtcSeconds: number;
};

/**
 * Whole runs, from a sample that is on to the next that is off; one that is cut off by the end of the record does not count.
 * Null where the samples are too coarse to tell or no run was seen. `season` is `coolingSeasonMask` on the grid.
 */
export function compressorRuns(series: PointSeries, grid: Grid, season: Uint8Array): CompressorRuns | null {
  const { ts, v } = series.samples;
  const usual = usualStepSeconds(ts);
  if (series.sampling === "interval" && (usual === null || usual > FINE_ENOUGH_SECONDS)) return null;
  const counts = (utcSeconds: number): boolean =>
    season[Math.floor((utcSeconds - grid.startUtcSeconds) / grid.stepSeconds)] === 1;
  const minutes: number[] = [];
  let began: number | null = null;
  let first = 0;
  let last = 0;
  for (let i = 0; i < ts.length; i++) {
    const at = ts[i] as number;
    const isOn = (v[i] as number) > 0;
    if (isOn) began ??= at;
    else if (began !== null) {
      if (counts(began)) {
        if (minutes.length === 0) first = began;
        last = at;
        minutes.push((at - began) / 60);
      }
      began = null;
    }
  }
  if (minutes.length === 0) return null;
  return {
    runs: minutes.length,
    shortRuns: minutes.filter((each) => each < SHORT_RUN_MINUTES).length,
    medianMinutes: medianInPlace(Float64Array.from(minutes)),
    fromUtcSeconds: first,
    toUtcSeconds: last,
  };
}
