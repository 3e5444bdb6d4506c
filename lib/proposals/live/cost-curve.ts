import { quantiles } from "@/lib/statistics/quantile";
import type { Range80 } from "@/lib/working/working";
import type { ActingWindow } from "../acting-window";
import { LEVER_SCALES, type ZoneLever } from "../lever";
import { LIVE_STATES, type LiveBuilding } from "../live-building";
import { energySaved } from "./energy-saved";
import { moreReports } from "./expected-sides";
import { moveOf, sharesOf } from "./felt";
import { totalsOf } from "./money";
import { drawCount, drawnNumbers, statedNumbers } from "./shared-numbers";
import { hoursBelowAfter } from "./temperature-hours";

/** Draws of each point: the curve follows a slider, and its points share them. */
const DRAWS = 40;
const STEP_K = 0.5;
/** A point counts as flat while its expected cost lies within this share of the curve's whole span: common practice, no source. */
const FLAT_SHARE = 0.05;
/** Most hours warmer than the comfort range: the dissatisfied that a vote of half a point leaves (ISO 7730, class B). */
export const MOST_WARM_SHARE = 0.1;

export type CurvePoint = Range80 & {
  raiseK: number;
  /** Mean over the draws of the year's cost beside today's: energy not saved, and work on cold and hot reports. */
  expected: number;
  /** Share of the hours above the comfort range. */
  warmShare: number;
};

/** Cost of a year over the rise of the cooling setpoint, other levers as they stand. */
export type CostCurve = {
  points: CurvePoint[];
  /** Rises within the comfort limit whose cost hardly differs from the least. */
  flat: { fromK: number; toK: number };
  /** Highest rise within the comfort limit. */
  allowedToK: number;
  hasReportCost: boolean;
};

/** Null where no zone has the cooling setpoint among its levers. */
export function costCurve(
  building: LiveBuilding,
  chosen: readonly ZoneLever[],
  window: ActingWindow,
): CostCurve | null {
  if (!chosen.some((each) => each.lever === "cooling-setpoint")) return null;
  const stated = statedNumbers(building);
  const count = Math.round(LEVER_SCALES["cooling-setpoint"].most / STEP_K);
  const draws = Array.from({ length: Math.min(DRAWS, drawCount(building)) }, (_, k) => drawnNumbers(building, k));
  const points = Array.from({ length: count + 1 }, (_, k): CurvePoint => {
    const raiseK = k * STEP_K;
    const levers = chosen.map((each) => (each.lever === "cooling-setpoint" ? { ...each, amount: raiseK } : each));
    const move = moveOf(building, levers, window, stated);
    const moved = energySaved(building, move, stated).byZone;
    const reportCost =
      building.costPerReport === null ? 0 : building.costPerReport * moreReports(building.reports, moved);
    const costs = draws.map(
      (shared) => reportCost - totalsOf(building, energySaved(building, move, shared), shared).saving,
    );
    const [p10, p50, p90] = quantiles(costs, [0.1, 0.5, 0.9]) as [number, number, number];
    const expected = costs.reduce((sum, each) => sum + each, 0) / costs.length;
    return { raiseK, expected, p10, p50, p90, warmShare: warmShareOf(building, moved) };
  });
  const allowed = points.filter((each) => each.warmShare <= Math.max(MOST_WARM_SHARE, points[0]?.warmShare ?? 0));
  const least = Math.min(...allowed.map((each) => each.expected));
  const span = Math.max(...points.map((each) => each.expected)) - Math.min(...points.map((each) => each.expected));
  const flat = allowed.filter((each) => each.expected <= least + FLAT_SHARE * span);
  return {
    points,
    flat: { fromK: flat[0]?.raiseK ?? 0, toK: flat.at(-1)?.raiseK ?? 0 },
    allowedToK: allowed.at(-1)?.raiseK ?? 0,
    hasReportCost: building.costPerReport !== null,
  };
}

function warmShareOf({ tempsC, comfort }: LiveBuilding, moved: ReturnType<typeof energySaved>["byZone"]): number {
  let hours = 0;
  let warm = 0;
  for (const { zone, effect, acting } of moved) {
    if (!zone.states) continue;
    const shares = sharesOf(zone, acting);
    for (const name of LIVE_STATES) {
      const state = zone.states[name];
      hours += state.hours;
      warm +=
        state.hours -
        hoursBelowAfter(state, tempsC, comfort.upperC, { riseK: effect.rises[name], share: shares[name] });
    }
  }
  return hours > 0 ? warm / hours : 0;
}
