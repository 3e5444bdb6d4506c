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
  const { values: a, stride: as } = terms[0] ?? NONE;
  const { values: b, stride: bs } = terms[1] ?? NONE;
  const { values: c, stride: cs } = terms[2] ?? NONE;
  const { values: d, stride: ds } = terms[3] ?? NONE;
  const n = into.length;
  if (terms.length <= 2) {
    for (let i = 0; i < n; i++) into[i] = compute(a[i * as] as number, b[i * bs] as number);
    return;
  }
  if (terms.length <= 4) {
    for (let i = 0; i < n; i++) {
      into[i] = compute(a[i * as] as number, b[i * bs] as number, c[i * cs] as number, d[i * ds] as number);
    }
    return;
  }
  const { values: e, stride: es } = terms[4] ?? NONE;
  const { values: f, stride: fs } = terms[5] ?? NONE;
  const { values: g, stride: gs } = terms[6] ?? NONE;
  const { values: h, stride: hs } = terms[7] ?? NONE;
  for (let i = 0; i < n; i++) {
    into[i] = compute(
      a[i * as] as number,
      b[i * bs] as number,
      c[i * cs] as number,
      d[i * ds] as number,
      e[i * es] as number,
      f[i * fs] as number,
      g[i * gs] as number,
      h[i * hs] as number,
    );
  }
}
