import { type Graph, under } from "./graph";
import type { Input, Quantity } from "./quantity";
import { type BlockTerm, stepLoop } from "./step-loop";

/** Columns worked on together: the values of a block stay in the processor's cache from one step to the next. */
const BLOCK = 512;

/** A table of columns, each a draw of the inputs or another set of values for them. */
export type ColumnRequest = {
  columns: number;
  wanted: readonly number[];
  /** Writes an uncertain input's values of a block: those of the columns from `start` on. */
  fillInput(input: Input, into: Float64Array, start: number): void;
  /** Takes a block of a wanted place that varies: its first `count` values are those of the columns from `start` on. */
  take(place: number, values: Float64Array, start: number, count: number): void;
};

/** A sum that grows with each of its parts, so that no part has to be kept until the last is there. */
type Growing = { into: Float64Array; from: number | null };

type Operation = {
  place: number;
  into: Float64Array;
  fill: ((start: number) => void) | null;
  addTo: Growing[];
  wanted: boolean;
};

/** Evaluates what `wanted` is made of, block by block, over the columns of the uncertain inputs. */
export function evaluateColumns(graph: Graph, stated: Float64Array, request: ColumnRequest): void {
  const operations = operationsFor(graph, stated, request);
  for (let start = 0; start < request.columns; start += BLOCK) {
    const count = Math.min(BLOCK, request.columns - start);
    for (const { place, into, fill, addTo, wanted } of operations) {
      fill?.(start);
      for (const sum of addTo) {
        if (sum.from === null) addOnto(sum.into, into);
        else addFresh(sum.into, into, sum.from);
      }
      if (wanted) request.take(place, into, start, count);
    }
  }
}

function addOnto(sum: Float64Array, part: Float64Array): void {
  for (let i = 0; i < BLOCK; i++) sum[i] = (sum[i] as number) + (part[i] as number);
}

function addFresh(sum: Float64Array, part: Float64Array, constant: number): void {
  for (let i = 0; i < BLOCK; i++) sum[i] = constant + (part[i] as number);
}

/** What to do for each block, in order, with the buffers to do it in; a buffer is used again once its last reader is done. */
function operationsFor(graph: Graph, stated: Float64Array, request: ColumnRequest): Operation[] {
  const marks = under(graph, request.wanted);
  const wanted = new Set(request.wanted);
  const lastReader = lastReaders(graph, marks);
  const buffers = new Map<number, Float64Array>();
  const free: Float64Array[] = [];
  const bufferOf = (place: number): { buffer: Float64Array; isNew: boolean } => {
    const known = buffers.get(place);
    if (known) return { buffer: known, isNew: false };
    const buffer = free.pop() ?? new Float64Array(BLOCK);
    buffers.set(place, buffer);
    return { buffer, isNew: true };
  };
  const release = (place: number): void => {
    const buffer = buffers.get(place);
    if (buffer) free.push(buffer);
    buffers.delete(place);
  };

  const operations: Operation[] = [];
  graph.order.forEach((quantity, place) => {
    if (marks[place] === 0 || graph.varies[place] === 0) return;
    const parts = graph.parts[place] as readonly number[];
    const { buffer: into } = bufferOf(place);
    const sums = (graph.dependents[place] as readonly number[]).filter(
      (above) => marks[above] === 1 && graph.order[above]?.kind === "sum",
    );
    const addTo = sums.map((above): Growing => {
      const { buffer, isNew } = bufferOf(above);
      return { into: buffer, from: isNew ? constantPart(graph, stated, above) : null };
    });
    const terms = parts.map((part): BlockTerm => buffers.get(part) ?? (stated[part] as number));
    operations.push({ place, into, fill: filling(quantity, into, terms, request), addTo, wanted: wanted.has(place) });
    for (const part of quantity.kind === "step" ? new Set(parts) : []) if (lastReader[part] === place) release(part);
    if ((lastReader[place] as number) < 0) release(place);
  });
  return operations;
}

/** The step that reads a place last, or -1: sums take their parts at once and read nothing later. */
function lastReaders(graph: Graph, marks: Uint8Array): Int32Array {
  const last = new Int32Array(graph.order.length).fill(-1);
  graph.order.forEach((quantity, place) => {
    if (marks[place] === 0 || quantity.kind !== "step") return;
    for (const part of graph.parts[place] as readonly number[]) last[part] = place;
  });
  return last;
}

const constantPart = (graph: Graph, stated: Float64Array, sum: number): number =>
  (graph.parts[sum] as readonly number[]).reduce(
    (total, part) => (graph.varies[part] === 1 ? total : total + (stated[part] as number)),
    0,
  );

function filling(
  quantity: Quantity,
  into: Float64Array,
  terms: readonly BlockTerm[],
  { fillInput }: ColumnRequest,
): Operation["fill"] {
  if (quantity.kind === "sum") return null;
  if (quantity.kind === "input") return (start) => fillInput(quantity, into, start);
  const loop = stepLoop(quantity, terms);
  return () => loop(into, quantity.compute, terms);
}
