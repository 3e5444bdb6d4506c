import type { ZoneLever } from "@/lib/proposals/lever";
import { type ColdGone, coldGoneOf, energySaved } from "@/lib/proposals/live/energy-saved";
import { totalsOf } from "@/lib/proposals/live/money";
import { drawCount, drawnNumbers, statedNumbers } from "@/lib/proposals/live/shared-numbers";
import { leversByZone } from "@/lib/proposals/live/zone-levers";
import { type LiveBuilding, SHARED_VALUES, type SharedNumbers } from "@/lib/proposals/live-building";
import { quantiles } from "@/lib/statistics/quantile";
import type { Range80 } from "@/lib/working/working";
import type { CaseTornadoLine } from "../case-input";

/** First-year saving of some levers in each draw of a building's frozen inputs, by the calculation that froze their range. */
export function savingDraws(building: LiveBuilding, levers: readonly ZoneLever[]): number[] {
  const savingOf = savingFunction(building, levers);
  return Array.from({ length: drawCount(building) }, (_, draw) => savingOf(drawnNumbers(building, draw)));
}

/**
 * Saving with one shared value at the P10 and at the P90 of its draws, all others as stated; widest first. A value that is
 * itself worked out (a price of two assumptions) has draws as well, where an assumption has ends.
 */
export function savingTornado(building: LiveBuilding, levers: readonly ZoneLever[]): CaseTornadoLine[] {
  const savingOf = savingFunction(building, levers);
  const stated = statedNumbers(building);
  return SHARED_VALUES.map((name): CaseTornadoLine => {
    const { term, draws } = building.shared[name];
    const [low, high] = quantiles(draws, [0.1, 0.9]) as [number, number];
    return {
      label: term.label,
      lowTotal: savingOf({ ...stated, [name]: low }),
      highTotal: savingOf({ ...stated, [name]: high }),
    };
  })
    .filter(({ lowTotal, highTotal }) => Math.abs(highTotal - lowTotal) > 1e-9)
    .sort((a, b) => Math.abs(b.highTotal - b.lowTotal) - Math.abs(a.highTotal - a.lowTotal));
}

/** True where draws still have the range that was frozen with them: the calculation is the one of the issue. */
export function isRangeOf(draws: readonly number[], { p10, p50, p90 }: Range80): boolean {
  const now = quantiles(draws, [0.1, 0.5, 0.9]) as [number, number, number];
  const size = Math.max(1, Math.abs(p10), Math.abs(p90));
  return [p10, p50, p90].every((frozen, at) => Math.abs(frozen - (now[at] as number)) <= 1e-6 * size);
}

function savingFunction(building: LiveBuilding, levers: readonly ZoneLever[]): (shared: SharedNumbers) => number {
  const byZone = leversByZone(levers);
  const coldGone: ColdGone = coldGoneOf(building, byZone, statedNumbers(building));
  return (shared) => totalsOf(building, energySaved(building, byZone, shared, coldGone), shared).saving;
}
