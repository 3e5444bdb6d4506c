import { drawing } from "./draw-input";
import { type Graph, graphOf, isUncertain, under } from "./graph";
import { inputEnds } from "./input-ends";
import { allMoving, type Operation, programFor, runProgram } from "./program";
import type { Input, Quantity } from "./quantity";
import { statedValues } from "./stated";
import { type TornadoLine, tornadoLines } from "./tornado";

export type Study = {
  /** Value with every input at its stated value. */
  stated(quantity: Quantity): number;
  /** Values in the draws, of a quantity that was kept; the same index is the same draw for every quantity. */
  draws(quantity: Quantity): Float64Array;
  /** Means over some of the draws, by number, of any quantities of the study. */
  meansOver(draws: Int32Array, quantities: readonly Quantity[]): number[];
  /** True when an uncertain input moves it. */
  varies(quantity: Quantity): boolean;
  /** Change of a total when the inputs of one group go to their low and high ends, widest first. */
  tornado(total: Quantity): TornadoLine[];
  /** Every input under a quantity, once. */
  inputsOf(root: Quantity): Input[];
};

/**
 * Evaluates quantities at their stated values and over seeded draws: every figure and its range come from the same
 * formulas. Each input has a random stream of its own, by `seedFromText(id) ^ seed`: common random numbers before and
 * after a change, and over all components. `keep` says whose draws are asked for later; `others` belong to the study
 * without that. Quantities that share much should stand next to each other.
 */
export function runStudy(
  keep: readonly Quantity[],
  options: { seed: number; draws: number; others?: readonly Quantity[] },
): Study {
  const graph = graphOf([...keep, ...(options.others ?? [])]);
  refuseTwins(graph);
  const stated = statedValues(graph);
  const program = programFor(graph, stated, allMoving(graph));
  const kept = keptDraws(graph, stated, keep, options.draws);
  const wanted = new Uint8Array(graph.order.length);
  for (const place of kept.keys()) wanted[place] = 1;
  runProgram(program, {
    count: options.draws,
    fillInput: drawing(options.seed),
    wanted,
    take: (place, values, start, count) => kept.get(place)?.set(values.subarray(0, count), start),
  });
  const known: Known = { graph, stated, program, seed: options.seed };

  return {
    stated: (quantity) => stated[graph.place(quantity)] as number,
    draws(quantity) {
      const draws = kept.get(graph.place(quantity));
      if (!draws) throw new Error(`the draws of "${quantity.label}" were not kept`);
      return draws;
    },
    meansOver: (draws, quantities) => meansOver(known, draws, quantities),
    varies: (quantity) => graph.varies[graph.place(quantity)] === 1,
    tornado: (total) => tornadoOf(known, total),
    inputsOf: (root) => inputsUnder(graph, under(graph, [graph.place(root)])),
  };
}

/** Room for the draws of some quantities, all in one piece: thousands of small ones each keep the collector busy. */
function keptDraws(
  graph: Graph,
  stated: Float64Array,
  keep: readonly Quantity[],
  draws: number,
): Map<number, Float64Array> {
  const places = [...new Set(keep.map(graph.place))];
  const room = new Float64Array(places.length * draws);
  return new Map(
    places.map((place, k) => {
      const values = room.subarray(k * draws, (k + 1) * draws);
      if (graph.varies[place] === 0) values.fill(stated[place] as number);
      return [place, values];
    }),
  );
}

type Known = { graph: Graph; stated: Float64Array; program: readonly Operation[]; seed: number };

function meansOver(
  { graph, stated, program, seed }: Known,
  draws: Int32Array,
  quantities: readonly Quantity[],
): number[] {
  const sums = new Float64Array(graph.order.length);
  const wanted = new Uint8Array(graph.order.length);
  const places = quantities.map(graph.place);
  for (const place of places) wanted[place] = 1;
  runProgram(program, {
    count: draws.length,
    fillInput: drawing(seed, draws),
    wanted,
    take: (place, values, _, count) => {
      let sum = sums[place] as number;
      for (let i = 0; i < count; i++) sum += values[i] as number;
      sums[place] = sum;
    },
  });
  return places.map((place) =>
    graph.varies[place] === 1 ? (sums[place] as number) / draws.length : (stated[place] as number),
  );
}

function tornadoOf({ graph, stated, program }: Known, total: Quantity): TornadoLine[] {
  const place = graph.place(total);
  const ends = inputEnds(graph, stated, program, { place, marks: under(graph, [place]) });
  return tornadoLines(stated[place] as number, ends);
}

const inputsUnder = ({ order }: Graph, marks: Uint8Array): Input[] =>
  order.filter((each, place): each is Input => marks[place] === 1 && each.kind === "input");

/** Two different inputs of one id would share their draws: a mistake. */
function refuseTwins({ order }: Graph): void {
  const ids = new Set<string>();
  for (const each of order) {
    if (each.kind !== "input" || !isUncertain(each)) continue;
    if (ids.has(each.id)) throw new Error(`two inputs have the id "${each.id}"`);
    ids.add(each.id);
  }
}
