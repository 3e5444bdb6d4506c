import { quantiles } from "@/lib/statistics/quantile";
import type { ActingWindow } from "../acting-window";
import type { ZoneLever } from "../lever";
import { type LiveBuilding, SHARED_VALUES, type SharedNumbers } from "../live-building";
import { energySaved } from "./energy-saved";
import { moveOf } from "./felt";
import { type Totals, totalsOf } from "./money";
import { drawCount, drawnNumbers, statedNumbers } from "./shared-numbers";

/** Saving of the first year with one shared value at the P10 and at the P90 of its draws, all others as stated. */
export type SavingSwing = { label: string; lowTotal: number; highTotal: number };

/** A variant's totals draw by draw, and what moves its saving, widest first: kept with an issue, so that sums can be made of it. */
export type DrawnTotals = { draws: Record<keyof Totals, number[]>; swings: SavingSwing[] };

/** Works the totals out in every draw, by the calculation that gives the picture its ranges. */
export function drawnTotals(building: LiveBuilding, chosen: readonly ZoneLever[], window: ActingWindow): DrawnTotals {
  const stated = statedNumbers(building);
  const move = moveOf(building, chosen, window, stated);
  const totals = (shared: SharedNumbers): Totals => totalsOf(building, energySaved(building, move, shared), shared);
  const all = Array.from({ length: drawCount(building) }, (_, draw) => totals(drawnNumbers(building, draw)));
  const drawsOf = (name: keyof Totals): number[] => all.map((each) => each[name]);
  const swings = SHARED_VALUES.map((name): SavingSwing => {
    const { term, draws } = building.shared[name];
    const [low, high] = quantiles(draws, [0.1, 0.9]) as [number, number];
    return {
      label: term.label,
      lowTotal: totals({ ...stated, [name]: low }).saving,
      highTotal: totals({ ...stated, [name]: high }).saving,
    };
  });
  const width = ({ lowTotal, highTotal }: SavingSwing): number => Math.abs(highTotal - lowTotal);
  return {
    draws: {
      saving: drawsOf("saving"),
      electricKwh: drawsOf("electricKwh"),
      heatKwh: drawsOf("heatKwh"),
      emissionsKgCo2: drawsOf("emissionsKgCo2"),
    },
    swings: swings.filter((each) => width(each) > 1e-9).sort((a, b) => width(b) - width(a)),
  };
}
