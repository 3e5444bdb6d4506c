import type { Term, Working } from "@/lib/working/working";
import type { Input, Quantity, Step, Sum } from "./quantity";
import type { Study } from "./study";

/**
 * Working of a quantity, its terms with their own workings inside. A term that stands in several places is worked out
 * in full where it first comes up and named after that place in the others: written out everywhere, the working of a
 * building would run to megabytes.
 *
 * `levels` leaves out the workings of terms deeper than that: 0 gives the formula and its values alone, for a summary
 * whose parts are worked out in full elsewhere.
 */
export function workingOf(root: Step | Sum, study: Study, levels = Number.POSITIVE_INFINITY): Working {
  const workedOut = new Map<Quantity, string>();

  const write = (quantity: Step | Sum, place: string, below: number): Working => {
    workedOut.set(quantity, place);
    const parts =
      quantity.kind === "step"
        ? quantity.terms.map((each) => ({ symbol: each.symbol, label: each.label, quantity: each, place }))
        : quantity.parts.map((each) => ({ ...each, place: each.label }));
    const working: Working = {
      formula: quantity.formula,
      terms: parts.map((each) => termOf(each.quantity, each.symbol, each.label, each.place, below)),
      result: {
        symbol: quantity.symbol,
        label: quantity.label,
        value: study.stated(quantity),
        unit: quantity.unit,
      },
    };
    if (quantity.notes && quantity.notes.length > 0) working.notes = quantity.notes;
    if (quantity.kind === "step" && quantity.source) working.source = quantity.source;
    return working;
  };

  const termOf = (quantity: Quantity, symbol: string, label: string, place: string, below: number): Term => {
    if (quantity.kind === "input") return inputTerm(quantity, symbol, label);
    const term: Term = {
      symbol,
      label,
      value: study.stated(quantity),
      unit: quantity.unit,
      origin: "computed",
    };
    const earlier = workedOut.get(quantity);
    if (below === 0) return term;
    if (earlier === undefined) term.working = write(quantity, place, below - 1);
    else term.source = `worked out above, under ${earlier}`;
    return term;
  };
  return write(root, root.label, levels);
}

function inputTerm(input: Input, symbol: string, label: string): Term {
  const term: Term = { symbol, label, value: input.value, unit: input.unit, origin: input.origin };
  if (input.high > input.low) {
    term.low = input.low;
    term.high = input.high;
  }
  if (input.source) term.source = input.source;
  if (input.assumptionId) term.assumptionId = input.assumptionId;
  if (input.href) term.href = input.href;
  return term;
}
