import { seededRandom, seedFromText } from "@/lib/statistics/random";
import { triangularQuantile } from "@/lib/statistics/triangular";
import { evaluateAll, inOrder } from "./evaluate-all";
import type { Column } from "./evaluate-column";
import type { Input, Quantity } from "./quantity";
import { type TornadoLine, tornadoLines } from "./tornado";

export type Study = {
  /** Value with every input at its stated value. */
  stated(quantity: Quantity): number;
  /** Values in the draws, of a quantity that was kept; the same index is the same draw for every quantity. */
  draws(quantity: Quantity): Float64Array;
  /** Change of a kept total when the inputs of one group go to their low and high ends, widest first. */
  tornado(total: Quantity): TornadoLine[];
  /** Every input under a quantity, once. */
  inputsOf(root: Quantity): Input[];
};

/**
 * Evaluates quantities over one set of columns: the stated values, two columns for each uncertain input (at its low
 * and high end) and `draws` seeded draws. Every figure and its range therefore come from the same formulas. Each input
 * has a random stream of its own, by `seedFromText(id) ^ seed`: common random numbers before and after a change.
 */
export function runStudy(keep: readonly Quantity[], options: { seed: number; draws: number }): Study {
  const uncertain = uncertainInputs(keep);
  const firstDraw = 1 + 2 * uncertain.length;
  const length = firstDraw + options.draws;
  const place = new Map(uncertain.map((each, i) => [each, 1 + 2 * i]));

  const inputColumn = (input: Input): Column => {
    const at = place.get(input);
    if (at === undefined) return { values: Float64Array.of(input.value), stride: 0 };
    const values = new Float64Array(length).fill(input.value, 0, firstDraw);
    values[at] = input.low;
    values[at + 1] = input.high;
    const random = seededRandom(seedFromText(input.id) ^ options.seed);
    const shape = { low: input.low, mode: input.value, high: input.high };
    for (let i = firstDraw; i < length; i++) values[i] = triangularQuantile(shape, random());
    return { values, stride: 1 };
  };
  const { stated, kept } = evaluateAll(keep, inputColumn, length);

  const columnOf = (quantity: Quantity): Column => {
    const column = kept.get(quantity);
    if (!column) throw new Error(`the draws of "${quantity.label}" were not kept`);
    return column;
  };
  const inputsOf = (root: Quantity): Input[] => inOrder([root]).filter((each): each is Input => each.kind === "input");

  return {
    stated(quantity) {
      const value = stated.get(quantity);
      if (value === undefined) throw new Error(`"${quantity.label}" was not evaluated`);
      return value;
    },
    draws(quantity) {
      const { values, stride } = columnOf(quantity);
      return stride === 1 ? values.subarray(firstDraw) : new Float64Array(options.draws).fill(values[0] as number);
    },
    tornado(total) {
      const { values, stride } = columnOf(total);
      const ends = inputsOf(total).flatMap((input) => {
        const at = place.get(input);
        if (at === undefined || stride === 0) return [];
        return [{ group: input.group, low: values[at] as number, high: values[at + 1] as number }];
      });
      return tornadoLines(values[0] as number, ends);
    },
    inputsOf,
  };
}

/** Uncertain inputs, each once. Two different inputs of one id would share their draws: a mistake. */
function uncertainInputs(roots: readonly Quantity[]): Input[] {
  const byId = new Map<string, Input>();
  for (const each of inOrder(roots)) {
    if (each.kind !== "input" || !(each.high > each.low)) continue;
    if (byId.has(each.id)) throw new Error(`two inputs have the id "${each.id}"`);
    byId.set(each.id, each);
  }
  return [...byId.values()];
}
