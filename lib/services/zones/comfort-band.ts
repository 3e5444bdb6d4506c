import type { PointRow } from "@/db/queries/points";
import { relativeAirSpeed } from "@/lib/comfort/air-speed";
import { comfortZone } from "@/lib/comfort/comfort-zone";
import { localDaysOver } from "@/lib/time/local-days";
import type { ZoneTable } from "@/lib/time/zone-table";
import type { Grid } from "@/lib/trends/grid";
import { resample } from "@/lib/trends/resample";
import { feltBasis } from "../comfort-reports/felt-inputs";
import type { Context } from "../context";
import { readSeries } from "../zone-analysis/building-record";

/** The standard's comfort zone from a moment on [UTC s], in °C. */
export type ComfortBand = { utcSeconds: number; lowC: number; highC: number }[];

/** One cool day does not change what people wear: outdoor air is averaged over a week before and after [s]. Judgement, no source. */
const HABIT_SECONDS = 7 * 86_400;

/**
 * Comfort range of ASHRAE 55 (predicted vote -0.5 to +0.5) day by day, for the clothing of the season: of summer on days
 * about which the outdoor air is that of the cooling season on average, and on all days where no outdoor air is recorded, as for the cost. For people
 * who type, in still air at 50 % humidity and surfaces as warm as the air: the middle of what a report is judged by.
 */
export async function comfortBand(
  ctx: Context,
  {
    points,
    grid,
    table,
    thresholdC,
  }: { points: readonly PointRow[]; grid: Grid; table: ZoneTable; thresholdC: number },
): Promise<ComfortBand> {
  const outdoor = points.find(({ kind, zoneId }) => kind === "outdoor-air-temp" && zoneId === null);
  const series = outdoor && (await readSeries(ctx, [outdoor], grid)).get(outdoor.id);
  const outdoorC = series ? resample(series, grid) : null;
  const toUtcSeconds = grid.startUtcSeconds + grid.count * grid.stepSeconds;
  const days = localDaysOver(table, { fromUtcSeconds: grid.startUtcSeconds, toUtcSeconds });
  const [summer, winter] = [true, false].map(rangeOf);
  const band: ComfortBand = [];
  for (let k = 0; k < days.count; k++) {
    const [from, to] = [days.edges[k] as number, days.edges[k + 1] as number];
    const mean = outdoorC ? meanBetween(outdoorC, grid, from - HABIT_SECONDS, to + HABIT_SECONDS) : null;
    // A day without outdoor samples keeps the range of the day before.
    const range = outdoorC === null || mean === null ? (band.at(-1) ?? summer) : mean >= thresholdC ? summer : winter;
    if (range) band.push({ utcSeconds: from, lowC: range.lowC, highC: range.highC });
  }
  const last = band.at(-1);
  return last ? [...band, { ...last, utcSeconds: toUtcSeconds }] : [];
}

function rangeOf(inCoolingSeason: boolean): { lowC: number; highC: number } | null {
  const known = { airTempC: 23, relHumidityPct: 50, inCoolingSeason, clothing: null, activity: null };
  const { airSpeedMps, relHumidityPct, metabolicRateMet, clothingClo } = feltBasis(known).inputs;
  const { lowerC, upperC } = comfortZone({
    relAirSpeedMps: relativeAirSpeed(airSpeedMps.middle, metabolicRateMet.middle),
    relHumidityPct: relHumidityPct.middle,
    metabolicRateMet: metabolicRateMet.middle,
    clothingClo: clothingClo.middle,
  });
  return lowerC === null || upperC === null ? null : { lowC: lowerC, highC: upperC };
}

function meanBetween(
  values: ArrayLike<number>,
  { startUtcSeconds, stepSeconds, count }: Grid,
  from: number,
  to: number,
) {
  let [sum, n] = [0, 0];
  const first = Math.max(0, Math.ceil((from - startUtcSeconds) / stepSeconds));
  const end = Math.min(count, Math.ceil((to - startUtcSeconds) / stepSeconds));
  for (let i = first; i < end; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value)) continue;
    sum += value;
    n++;
  }
  return n > 0 ? sum / n : null;
}
