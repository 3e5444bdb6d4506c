import type { Graph } from "./graph";
import type { Input, Step } from "./quantity";
import { type BlockTerm, type StepLoop, stepLoop } from "./step-loop";

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
  /** Sums that this is a part of, and those of them that begin with it: what the constant parts come to. */
  sums: readonly Float64Array[];
  begins: readonly { sum: Float64Array; constant: number }[];
};

/**
 * The operations of all places that vary, in order, with buffers to do them in. A sum grows with each of its parts, so
 * that no part has to be kept until the last is there; a buffer is used again once its last reader is done.
 */
export function programFor(graph: Graph, stated: Float64Array): Operation[] {
  const { order, parts, dependents, varies } = graph;
  const lastReader = lastReaders(graph);
  const buffers = new Array<Float64Array | undefined>(order.length);
  const free: Float64Array[] = [];
  const take = (place: number): Float64Array => {
    const buffer = free.pop() ?? new Float64Array(BLOCK);
    buffers[place] = buffer;
    return buffer;
  };
  const release = (place: number): void => {
    const buffer = buffers[place];
    if (buffer) free.push(buffer);
    buffers[place] = undefined;
  };

  const operations: Operation[] = [];
  for (let place = 0; place < order.length; place++) {
    const quantity = order[place];
    if (!quantity || varies[place] === 0) continue;
    const into = buffers[place] ?? take(place);
    const sums: Float64Array[] = [];
    const begins: Operation["begins"][number][] = [];
    for (const above of dependents[place] as readonly number[]) {
      if (order[above]?.kind !== "sum") continue;
      const known = buffers[above];
      const sum = known ?? take(above);
      if (!known) begins.push({ sum, constant: constantPart(graph, stated, above) });
      sums.push(sum);
    }
    const isStep = quantity.kind === "step";
    const under = parts[place] as readonly number[];
    const terms = isStep ? under.map((part): BlockTerm => buffers[part] ?? (stated[part] as number)) : NO_TERMS;
    operations.push({
      place,
      into,
      input: quantity.kind === "input" ? quantity : null,
      compute: isStep ? quantity.compute : null,
      loop: isStep ? stepLoop(quantity, terms) : null,
      terms,
      sums,
      begins,
    });
    if (isStep) for (const part of under) if (lastReader[part] === place) release(part);
    if ((lastReader[place] as number) < 0) release(place);
  }
  return operations;
}

const NO_TERMS: readonly BlockTerm[] = [];

/** The step that reads a place last, or -1: sums take their parts at once and read nothing later. */
function lastReaders({ order, parts }: Graph): Int32Array {
  const last = new Int32Array(order.length).fill(-1);
  for (let place = 0; place < order.length; place++) {
    if (order[place]?.kind !== "step") continue;
    for (const part of parts[place] as readonly number[]) last[part] = place;
  }
  return last;
}

function constantPart({ parts, varies }: Graph, stated: Float64Array, sum: number): number {
  let total = 0;
  for (const part of parts[sum] as readonly number[]) if (varies[part] === 0) total += stated[part] as number;
  return total;
}

/** A table of columns, each a draw of the inputs or another set of values for them. */
export type Columns = {
  count: number;
  /** Writes an uncertain input's values of a block: those of the columns from `start` on. */
  fillInput(input: Input, into: Float64Array, start: number): void;
  /** Places whose values are asked for. */
  wanted: Uint8Array;
  /** Takes a block of a wanted place: its first `count` values are those of the columns from `start` on. */
  take(place: number, values: Float64Array, start: number, count: number): void;
};

/** Runs a program over columns, block by block. */
export function runProgram(program: readonly Operation[], { count, fillInput, wanted, take }: Columns): void {
  for (let start = 0; start < count; start += BLOCK) {
    const here = Math.min(BLOCK, count - start);
    for (const { place, into, input, loop, compute, terms, sums, begins } of program) {
      if (input) fillInput(input, into, start);
      else if (loop && compute) loop(into, compute, terms);
      for (const { sum, constant } of begins) sum.fill(constant);
      for (const sum of sums) addOnto(sum, into);
      if (wanted[place] === 1) take(place, into, start, here);
    }
  }
}

function addOnto(sum: Float64Array, part: Float64Array): void {
  for (let i = 0; i < BLOCK; i++) sum[i] = (sum[i] as number) + (part[i] as number);
}
