import { type Graph, isUncertain } from "./graph";
import { type Operation, runProgram } from "./program";
import type { Input, Quantity } from "./quantity";
import type { Ends } from "./tornado";

/** Dependents from which all columns at once cost less than following the input's own. */
const MANY_DEPENDENTS = 400;

/**
 * A root's values with one uncertain input at its low and at its high end and all others at their stated values, for
 * every input under it. An input of one zone or device touches few places, and only those are worked out again: a
 * building of 2,000 zones has thousands of such inputs. What all zones share is evaluated like draws, a column an end.
 */
export function inputEnds(
  graph: Graph,
  stated: Float64Array,
  program: readonly Operation[],
  root: { place: number; marks: Uint8Array },
): Ends[] {
  const seen = new Uint8Array(graph.order.length);
  const fresh = Float64Array.from(stated);
  const shared: Input[] = [];
  const ends: Ends[] = [];
  graph.order.forEach((input, place) => {
    if (input.kind !== "input" || root.marks[place] === 0 || !isUncertain(input)) return;
    const moved = affected(graph, place, root.marks, seen);
    if (moved.length > MANY_DEPENDENTS) {
      shared.push(input);
    } else {
      const at = (value: number): number => {
        follow(graph, stated, fresh, { moved, seen, value });
        const result = fresh[root.place] as number;
        for (const each of moved) fresh[each] = stated[each] as number;
        return result;
      };
      ends.push({ group: input.group, low: at(input.low), high: at(input.high) });
    }
    for (const each of moved) seen[each] = 0;
  });
  return [...ends, ...sharedEnds(program, root.place, shared, graph.order.length)];
}

/** Places that depend on one, itself first, in order; `seen` is 1 at each of them afterwards. */
function affected(graph: Graph, from: number, marks: Uint8Array, seen: Uint8Array): Int32Array {
  const found: number[] = [];
  const waiting = [from];
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    if (seen[place] === 1 || marks[place] === 0) continue;
    seen[place] = 1;
    found.push(place);
    for (const above of graph.dependents[place] as readonly number[]) waiting.push(above);
  }
  return Int32Array.from(found).sort();
}

/** Works out again what one input moves; `fresh` holds the stated values on entry. */
function follow(
  graph: Graph,
  stated: Float64Array,
  fresh: Float64Array,
  { moved, seen, value }: { moved: Int32Array; seen: Uint8Array; value: number },
): void {
  for (const place of moved) {
    const quantity = graph.order[place] as Quantity;
    const parts = graph.parts[place] as readonly number[];
    if (quantity.kind === "input") fresh[place] = value;
    else if (quantity.kind === "step") fresh[place] = quantity.compute(...parts.map((each) => fresh[each] as number));
    // A sum of thousands of parts moves by what its parts move, not by being added up again.
    const change = (fresh[place] as number) - (stated[place] as number);
    for (const above of graph.dependents[place] as readonly number[]) {
      if (seen[above] === 1 && graph.order[above]?.kind === "sum") fresh[above] = (fresh[above] as number) + change;
    }
  }
}

function sharedEnds(program: readonly Operation[], root: number, inputs: readonly Input[], places: number): Ends[] {
  if (inputs.length === 0) return [];
  const columnOf = new Map(inputs.map((each, k) => [each, 2 * k]));
  const totals = new Float64Array(2 * inputs.length);
  const wanted = new Uint8Array(places);
  wanted[root] = 1;
  runProgram(program, {
    count: totals.length,
    wanted,
    fillInput: (input, into, start) => {
      into.fill(input.value);
      const at = columnOf.get(input);
      if (at === undefined) return;
      if (at >= start && at < start + into.length) into[at - start] = input.low;
      if (at + 1 >= start && at + 1 < start + into.length) into[at + 1 - start] = input.high;
    },
    take: (_, values, start, count) => totals.set(values.subarray(0, count), start),
  });
  return inputs.map(({ group }, k) => ({ group, low: totals[2 * k] as number, high: totals[2 * k + 1] as number }));
}
