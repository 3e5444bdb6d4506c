import type { Graph } from "./graph";
import type { Input, Step } from "./quantity";
import { type BlockSum, type BlockTerm, type StepLoop, stepLoop } from "./step-loop";

/** Columns worked on together: the values of a block stay in the processor's cache from one step to the next. */
export const BLOCK = 512;

/** What to do for a block at one place: fill a buffer by drawing or by computing, and add it to the sums it is part of. */
export type Operation = {
  place: number;
  into: Float64Array;
  input: Input | null;
  compute: Step["compute"] | null;
  loop: StepLoop | null;
  terms: readonly BlockTerm[];
  sums: readonly BlockSum[];
};

/** Which places a program works out, all others being held at their stated values. */
export type Moving = {
  /** Ascending. */
  places: Int32Array;
  /** 1 at each of them. */
  marks: Uint8Array;
  /** Most columns of a block. */
  block: number;
};

/** All places that vary. */
export function allMoving({ varies }: Graph): Moving {
  let count = 0;
  for (const each of varies) count += each;
  const places = new Int32Array(count);
  let next = 0;
  for (let place = 0; place < varies.length; place++) if (varies[place] === 1) places[next++] = place;
  return { places, marks: varies, block: BLOCK };
}

/**
 * The operations of some places, in order, with buffers to do them in. A sum grows with each of its parts, so that no
 * part has to be kept until the last is there; a buffer is used again once its last reader is done.
 */
export function programFor(graph: Graph, stated: Float64Array, { places, marks, block }: Moving): Operation[] {
  const { order, parts, dependents } = graph;
  const lastReader = lastReaders(graph, places);
  // Which buffer holds a place's values: -1 for none. A buffer is kept as a sum that goes on growing, which most are.
  const bufferOf = new Int32Array(order.length).fill(-1);
  const buffers: BlockSum[] = [];
  const free: number[] = [];
  const take = (place: number): BlockSum => {
    const number = free.pop() ?? buffers.push({ values: new Float64Array(block), begins: null }) - 1;
    bufferOf[place] = number;
    return buffers[number] as BlockSum;
  };
  const held = (place: number): BlockSum | undefined => buffers[bufferOf[place] as number];
  const release = (place: number): void => {
    const number = bufferOf[place] as number;
    if (number >= 0) free.push(number);
    bufferOf[place] = -1;
  };

  const operations: Operation[] = [];
  for (const place of places) {
    const quantity = order[place];
    if (!quantity) continue;
    const into = (held(place) ?? take(place)).values;
    let sums: BlockSum[] = NO_SUMS;
    for (let k = dependents.from[place] as number; k < (dependents.from[place + 1] as number); k++) {
      const above = dependents.places[k] as number;
      if (order[above]?.kind !== "sum" || marks[above] === 0) continue;
      const known = held(above);
      if (sums === NO_SUMS) sums = [];
      if (known) sums.push(known);
      else sums.push({ values: take(above).values, begins: constantPart(graph, stated, marks, above) });
    }
    const step = quantity.kind === "step" ? quantity : null;
    const terms: BlockTerm[] = step ? [] : NO_TERMS;
    const [first, end] = step ? [parts.from[place] as number, parts.from[place + 1] as number] : [0, 0];
    for (let k = first; k < end; k++) {
      const part = parts.places[k] as number;
      terms.push(held(part)?.values ?? (stated[part] as number));
    }
    operations.push({
      place,
      into,
      input: quantity.kind === "input" ? quantity : null,
      compute: step ? step.compute : null,
      loop: step ? stepLoop(step, terms, sums) : null,
      terms,
      sums,
    });
    for (let k = first; k < end; k++) {
      const part = parts.places[k] as number;
      if (lastReader[part] === place) release(part);
    }
    if ((lastReader[place] as number) < 0) release(place);
  }
  return operations;
}

const NO_TERMS: BlockTerm[] = [];
const NO_SUMS: BlockSum[] = [];

/** The step among some places that reads a place last, or -1: sums take their parts at once and read nothing later. */
function lastReaders({ order, parts }: Graph, places: Int32Array): Int32Array {
  const last = new Int32Array(order.length).fill(-1);
  for (const place of places) {
    if (order[place]?.kind !== "step") continue;
    for (let k = parts.from[place] as number; k < (parts.from[place + 1] as number); k++)
      last[parts.places[k] as number] = place;
  }
  return last;
}

function constantPart({ parts }: Graph, stated: Float64Array, marks: Uint8Array, sum: number): number {
  let total = 0;
  for (let k = parts.from[sum] as number; k < (parts.from[sum + 1] as number); k++) {
    const part = parts.places[k] as number;
    if (marks[part] === 0) total += stated[part] as number;
  }
  return total;
}

/** A table of columns, each a draw of the inputs or another set of values for them. */
export type Columns = {
  count: number;
  /** Writes the first `count` values of an uncertain input's block: those of the columns from `start` on. */
  fillInput(input: Input, into: Float64Array, start: number, count: number): void;
  /** Places whose values are asked for. */
  wanted: Uint8Array;
  /** Takes a block of a wanted place: its first `count` values are those of the columns from `start` on. */
  take(place: number, values: Float64Array, start: number, count: number): void;
};

/** Runs a program over columns, block by block. */
export function runProgram(
  program: readonly Operation[],
  { count, fillInput, wanted, take }: Columns,
  block = BLOCK,
): void {
  for (let start = 0; start < count; start += block) {
    const here = Math.min(block, count - start);
    for (const { place, into, input, loop, compute, terms, sums } of program) {
      if (loop && compute) {
        loop(here, into, compute, terms, sums);
      } else {
        if (input) fillInput(input, into, start, here);
        for (const sum of sums) addOnto(sum, into, here);
      }
      if (wanted[place] === 1) take(place, into, start, here);
    }
  }
}

function addOnto({ values, begins }: BlockSum, part: Float64Array, count: number): void {
  if (begins !== null) values.fill(begins, 0, count);
  for (let i = 0; i < count; i++) values[i] = (values[i] as number) + (part[i] as number);
}
