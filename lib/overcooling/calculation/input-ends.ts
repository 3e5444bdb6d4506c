import { type Graph, isUncertain } from "./graph";
import { type Moving, type Operation, programFor, runProgram } from "./program";
import type { Input, Quantity } from "./quantity";
import type { Ends } from "./tornado";

/** Dependents from which a block of inputs at once costs less than following each by itself. */
const MANY_DEPENDENTS = 128;

/** Inputs of many dependents that are worked out together. */
const TOGETHER = 64;

/** A root and 1 at every place under it. */
export type Root = { place: number; marks: Uint8Array };

/**
 * A root's values with one uncertain input at its low and at its high end and all others at their stated values, for
 * every input under it. An input of one zone or device touches few places, and only those are worked out again: a
 * building of 2,000 zones has thousands of such inputs. What reaches further (the minimum airflow of one zone moves the
 * outdoor air of all) is evaluated like draws, a column an end, over the places that some inputs move together.
 */
export function inputEnds(graph: Graph, stated: Float64Array, program: readonly Operation[], root: Root): Ends[] {
  const seen = new Uint8Array(graph.order.length);
  const fresh = stated.slice();
  const wide: number[] = [];
  const ends: Ends[] = [];
  graph.order.forEach((input, place) => {
    if (input.kind !== "input" || root.marks[place] === 0 || !isUncertain(input)) return;
    const moved: number[] = [];
    if (affected(graph, [place], root, seen, MANY_DEPENDENTS, moved)) {
      moved.sort(ascending);
      const at = (value: number): number => {
        follow(graph, stated, fresh, { moved, seen, value });
        const result = fresh[root.place] as number;
        for (const each of moved) fresh[each] = stated[each] as number;
        return result;
      };
      ends.push({ group: input.group, low: at(input.low), high: at(input.high) });
    } else {
      wide.push(place);
    }
    for (const each of moved) seen[each] = 0;
  });
  for (let from = 0; from < wide.length; from += TOGETHER) {
    const places = wide.slice(from, from + TOGETHER);
    const found: number[] = [];
    affected(graph, places, root, seen, Number.POSITIVE_INFINITY, found);
    const moved = new Int32Array(found).sort();
    const moving: Moving = { places: moved, marks: seen, block: 2 * places.length };
    const inputs = places.map((place) => graph.order[place] as Input);
    const run = 2 * moved.length > program.length ? program : programFor(graph, stated, moving);
    ends.push(...endsTogether(run, root.place, inputs, graph.order.length));
    for (const each of found) seen[each] = 0;
  }
  return ends;
}

const ascending = (a: number, b: number): number => a - b;

/**
 * Adds the places under a root that depend on some of them to `moved`, these first; `seen` is 1 at each of them
 * afterwards. False, and not all of them, when there may be more than `most`.
 */
function affected(
  { dependents }: Graph,
  from: readonly number[],
  { marks }: Root,
  seen: Uint8Array,
  most: number,
  moved: number[],
): boolean {
  const waiting = [...from];
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    if (seen[place] === 1 || marks[place] === 0) continue;
    seen[place] = 1;
    moved.push(place);
    const [first, end] = [dependents.from[place] as number, dependents.from[place + 1] as number];
    if (moved.length + waiting.length + end - first > most) return false;
    for (let k = first; k < end; k++) waiting.push(dependents.places[k] as number);
  }
  return true;
}

/** Works out again what one input moves; `fresh` holds the stated values on entry. */
function follow(
  { order, parts, dependents }: Graph,
  stated: Float64Array,
  fresh: Float64Array,
  { moved, seen, value }: { moved: readonly number[]; seen: Uint8Array; value: number },
): void {
  for (const place of moved) {
    const quantity = order[place] as Quantity;
    if (quantity.kind === "input") {
      fresh[place] = value;
    } else if (quantity.kind === "step") {
      const terms: number[] = [];
      for (let k = parts.from[place] as number; k < (parts.from[place + 1] as number); k++)
        terms.push(fresh[parts.places[k] as number] as number);
      fresh[place] = quantity.compute(...terms);
    }
    // A sum of thousands of parts moves by what its parts move, not by being added up again.
    const change = (fresh[place] as number) - (stated[place] as number);
    for (let k = dependents.from[place] as number; k < (dependents.from[place + 1] as number); k++) {
      const above = dependents.places[k] as number;
      if (seen[above] === 1 && order[above]?.kind === "sum") fresh[above] = (fresh[above] as number) + change;
    }
  }
}

function endsTogether(program: readonly Operation[], root: number, inputs: readonly Input[], places: number): Ends[] {
  const columnOf = new Map(inputs.map((each, k) => [each, 2 * k]));
  const totals = new Float64Array(2 * inputs.length);
  const wanted = new Uint8Array(places);
  wanted[root] = 1;
  runProgram(program, {
    count: totals.length,
    wanted,
    fillInput: (input, into, start, count) => {
      into.fill(input.value, 0, count);
      const at = columnOf.get(input);
      if (at === undefined) return;
      if (at >= start && at < start + count) into[at - start] = input.low;
      if (at + 1 >= start && at + 1 < start + count) into[at + 1 - start] = input.high;
    },
    take: (_, values, start, count) => totals.set(values.subarray(0, count), start),
  });
  return inputs.map(({ group }, k) => ({ group, low: totals[2 * k] as number, high: totals[2 * k + 1] as number }));
}
