/**
 * The working under a figure: the formula, every value that went in, and where each came from. One form for
 * every figure of energy or money, made where the figure is computed and never written beside it.
 */

/** Where a value came from. `computed` values carry a working of their own or are steps of this one. */
export type Origin = "measured" | "entered" | "default" | "computed";

/** One value in a formula. `symbol` is as written in the formula; `unit` is "" for a pure number. */
export type Term = {
  symbol: string;
  label: string;
  value: number;
  unit: string;
  origin: Origin;
  /** Range of the value, when it has one. */
  low?: number;
  high?: number;
  /** Published source or the trend, device or entry behind the value. */
  source?: string;
  /** Id of the assumption that the value is, when it is one. */
  assumptionId?: string;
  /** Path inside the building's pages to the readings or record behind the value. */
  href?: string;
  /** How this value was itself worked out. */
  working?: Working;
};

/** A formula with its values and result. `formula` uses the symbols of the terms, in plain text. */
export type Working = {
  formula: string;
  terms: Term[];
  result: { symbol: string; label: string; value: number; unit: string };
  notes?: string[];
  /** Published source of the formula itself. */
  source?: string;
};

/** P10, P50 and P90 of a figure over the drawn inputs (an 80 % range). */
export type Range80 = { p10: number; p50: number; p90: number };

/** Ids of all assumptions used in a working, at any depth, each once. */
export function assumptionsUsed(working: Working): string[] {
  const ids = new Set<string>();
  const visit = (each: Working): void => {
    for (const term of each.terms) {
      if (term.assumptionId) ids.add(term.assumptionId);
      if (term.working) visit(term.working);
    }
  };
  visit(working);
  return [...ids];
}

/** A working with `levels` levels of its terms' workings; of those below only formula and result, to be opened elsewhere. */
export function cutWorking(working: Working, levels: number): Working {
  const terms = working.terms.map((term) =>
    term.working === undefined
      ? term
      : { ...term, working: levels > 0 ? cutWorking(term.working, levels - 1) : headOf(term.working) },
  );
  return { ...working, terms };
}

const headOf = ({ formula, result }: Working): Working => ({ formula, terms: [], result });
