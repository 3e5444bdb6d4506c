import { currencySign } from "@/app/_components/quantity/money-figure";
import type { Sensitivity } from "@/lib/overcooling/live-effect";
import type { OverrideEffect } from "@/lib/services/assumptions/preview";
import { type Assessed, whole } from "../overview-view-model";
import type { EffectRow, ShownEffect } from "./override-state";

/** The cost before and after, line by line, and the change in a sentence. */
export function shownEffect({ currency, before, after, refusals }: OverrideEffect): ShownEffect {
  if (!after)
    return {
      rows: [],
      sentence: `With this value there would be no figure. ${refusals.map((each) => `${each.what} ${each.action}`).join(" ")}`,
    };
  if (!before) return { rows: [], sentence: "There is no figure yet that this value could change." };
  const sign = currencySign(currency);
  const row = (key: string, label: string, from: number, to: number): EffectRow => ({
    key,
    label,
    before: whole(from),
    after: whole(to),
    change: signed(to - from),
  });
  const difference = Math.round(after.range.p50) - Math.round(before.range.p50);
  return {
    rows: [
      row("p10", "P10", before.range.p10, after.range.p10),
      row("p50", "Most likely", before.range.p50, after.range.p50),
      row("p90", "P90", before.range.p90, after.range.p90),
      row("stated", "At stated values", before.stated, after.stated),
    ],
    sentence:
      difference === 0
        ? "The most likely cost a year stays as it is. Nothing is saved yet."
        : `The most likely cost a year would ${difference > 0 ? "rise" : "fall"} by ${sign}${whole(Math.abs(difference))}. Nothing is saved yet.`,
  };
}

const signed = (value: number): string => {
  const rounded = Math.round(value);
  return rounded > 0 ? `+${whole(rounded)}` : whole(rounded);
};

/**
 * What the form needs to follow what is typed: the total's swing with this assumption and the spread of all others.
 * Null where the total does not rest on it, or where it is drawn apart for each zone and one swing does not say.
 */
export function sensitivityOf(
  assessed: Assessed,
  assumption: { id: string; value: number; low: number; high: number },
): Sensitivity | null {
  const line = assessed.tornado.find((each) => each.assumptionId === assumption.id);
  if (line?.inputs !== 1) return null;
  const squares = assessed.tornado
    .filter((each) => each !== line)
    .reduce((sum, each) => sum + (each.highTotal - each.lowTotal) ** 2 / 24, 0);
  const { value, low, high } = assumption;
  const { lowTotal, highTotal } = line;
  return { stated: assessed.statedTotal, othersDeviation: Math.sqrt(squares), value, low, high, lowTotal, highTotal };
}

/** Span of the total between the ends of an assumption's range, or "" where the total does not rest on it. */
export function swingFigure(assessed: Assessed | null, assumptionId: string): string {
  const line = assessed?.tornado.find((each) => each.assumptionId === assumptionId);
  return line ? whole(Math.abs(line.highTotal - line.lowTotal)) : "";
}
