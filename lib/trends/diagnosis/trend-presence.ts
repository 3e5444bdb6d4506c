import { stepHours } from "../grid";
import type { PointKind } from "../point-kind";
import type { ZoneGrids } from "../zone-grids";

/** Trends that the rules need beside the zone air; the place of each is its bit. */
export const RULE_TRENDS = [
  "cooling-setpoint",
  "heating-setpoint",
  "airflow",
  "damper-position",
  "reheat-valve",
  "discharge-air-temp",
  "supply-air-temp",
] as const satisfies readonly PointKind[];
export type RuleTrend = (typeof RULE_TRENDS)[number];

/** Hours of the intervals that rules look at by which trends are recorded in them: pairs of a set of bits and hours. */
export type TrendPresence = [number, number][];

/** `season` is `coolingSeasonMask` of the same grids: the hours that the rules observe. */
export function trendPresence(grids: ZoneGrids, season: Uint8Array): TrendPresence {
  const arrays = [
    grids.coolingSetpointC,
    grids.heatingSetpointC,
    grids.airflowM3ps,
    grids.damperPct,
    grids.reheatValvePct,
    grids.dischargeAirTempC,
    grids.supplyAirTempC,
  ];
  const counts = new Float64Array(1 << RULE_TRENDS.length);
  for (let i = 0; i < season.length; i++) {
    if (season[i] !== 1) continue;
    let bits = 0;
    for (let k = 0; k < arrays.length; k++) {
      const values = arrays[k];
      if (values && !Number.isNaN(values[i] as number)) bits |= 1 << k;
    }
    counts[bits] = (counts[bits] as number) + 1;
  }
  const hoursEach = stepHours(grids.grid);
  return [...counts].flatMap((count, bits): TrendPresence => (count > 0 ? [[bits, count * hoursEach]] : []));
}

/** Hours in which all the given trends are recorded. */
export function hoursWith(presence: TrendPresence, trends: readonly RuleTrend[]): number {
  const wanted = trends.reduce((bits, trend) => bits | (1 << RULE_TRENDS.indexOf(trend)), 0);
  return presence.reduce((sum, [bits, hours]) => ((bits & wanted) === wanted ? sum + hours : sum), 0);
}
