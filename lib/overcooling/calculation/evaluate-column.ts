import type { Step, Sum } from "./quantity";

/** A run of values of one quantity. Stride 0 is one value for the whole run. */
export type Column = { values: Float64Array; stride: 0 | 1 };

/** Writes the values of a step or sum over a run into `into`, element by element, from those of its terms. */
export function evaluateColumn(quantity: Step | Sum, terms: readonly Column[], into: Float64Array): void {
  if (quantity.kind === "sum") addUp(into, terms);
  else fill(into, quantity.compute, terms);
}

function addUp(into: Float64Array, terms: readonly Column[]): void {
  into.fill(0);
  for (const { values, stride } of terms) {
    for (let i = 0, k = 0; i < into.length; i++, k += stride) into[i] = (into[i] as number) + (values[k] as number);
  }
}

const NONE: Column = { values: Float64Array.of(Number.NaN), stride: 0 };
const MOST_TERMS = 8;

/** Calls `compute` for each index with the terms as arguments: spreading an array would cost ten times as much. */
function fill(into: Float64Array, compute: Step["compute"], terms: readonly Column[]): void {
  if (terms.length > MOST_TERMS) {
    throw new RangeError(`a step takes at most ${MOST_TERMS} terms; make steps of its parts`);
  }
  const [a, b, c, d] = [0, 1, 2, 3].map((i) => terms[i] ?? NONE) as [Column, Column, Column, Column];
  const n = into.length;
  if (terms.length <= 2) {
    for (let i = 0; i < n; i++) {
      into[i] = compute(a.values[i * a.stride] as number, b.values[i * b.stride] as number);
    }
    return;
  }
  if (terms.length <= 4) {
    for (let i = 0; i < n; i++) {
      into[i] = compute(
        a.values[i * a.stride] as number,
        b.values[i * b.stride] as number,
        c.values[i * c.stride] as number,
        d.values[i * d.stride] as number,
      );
    }
    return;
  }
  const [e, f, g, h] = [4, 5, 6, 7].map((i) => terms[i] ?? NONE) as [Column, Column, Column, Column];
  for (let i = 0; i < n; i++) {
    into[i] = compute(
      a.values[i * a.stride] as number,
      b.values[i * b.stride] as number,
      c.values[i * c.stride] as number,
      d.values[i * d.stride] as number,
      e.values[i * e.stride] as number,
      f.values[i * f.stride] as number,
      g.values[i * g.stride] as number,
      h.values[i * h.stride] as number,
    );
  }
}
