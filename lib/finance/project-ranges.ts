import { quantilesBySelection } from "@/lib/statistics/select";
import type { Range80 } from "@/lib/working/working";
import type { CashFlowPlan } from "./cash-flow";
import { projectFigures } from "./project-figures";

/** A range some of whose ends may never come: a change that saves nothing is never paid back. */
export type OpenRange80 = { p10: number | null; p50: number | null; p90: number | null };

export type ProjectRanges = {
  netPresentValue: Range80;
  simplePaybackYears: OpenRange80;
  /** Null without an outlay. */
  savingsToInvestment: Range80 | null;
  /** Share of the draws in which the change costs more than it brings. */
  lossShare: number;
};

type Drawn = {
  /** Everything that is not drawn. */
  plan: Omit<CashFlowPlan, "savingPerYear" | "lifeYears">;
  /** One a draw; the same index is the same draw. */
  savingPerYear: Float64Array;
  lifeYears: Float64Array;
};

/** The figures of a project over the draws of its saving and of its life: an 80 % range of each. */
export function projectRanges({ plan, savingPerYear, lifeYears }: Drawn): ProjectRanges {
  const count = savingPerYear.length;
  if (count === 0 || lifeYears.length !== count) throw new RangeError("savings and lives must be drawn as often");
  const values = new Float64Array(count);
  const paybacks = new Float64Array(count);
  let losses = 0;
  for (let i = 0; i < count; i++) {
    const figures = projectFigures({
      ...plan,
      savingPerYear: savingPerYear[i] as number,
      lifeYears: lifeYears[i] as number,
    });
    values[i] = figures.netPresentValue;
    paybacks[i] = figures.simplePaybackYears ?? Number.POSITIVE_INFINITY;
    if (figures.netPresentValue < 0) losses++;
  }
  const netPresentValue = rangeOf(values);
  const ratio = (value: number): number => (value + plan.outlay) / plan.outlay;
  const { p10, p50, p90 } = netPresentValue;
  return {
    netPresentValue,
    simplePaybackYears: openRangeOf(paybacks),
    savingsToInvestment: plan.outlay > 0 ? { p10: ratio(p10), p50: ratio(p50), p90: ratio(p90) } : null,
    lossShare: losses / count,
  };
}

function rangeOf(draws: Float64Array): Range80 {
  const [p10, p50, p90] = quantilesBySelection(draws, [0.1, 0.5, 0.9]) as [number, number, number];
  return { p10, p50, p90 };
}

/** Draws that are never paid back stand at the end; a quantile among them is none, also one between two neighbours. */
function openRangeOf(draws: Float64Array): OpenRange80 {
  const ascending = draws.slice().sort();
  const at = (share: number): number | null => {
    const position = (ascending.length - 1) * share;
    const [low, high] = [ascending[Math.floor(position)] as number, ascending[Math.ceil(position)] as number];
    if (!Number.isFinite(high)) return null;
    return low + (high - low) * (position - Math.floor(position));
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}
