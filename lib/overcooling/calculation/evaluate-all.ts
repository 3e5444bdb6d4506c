import { type Column, evaluateColumn } from "./evaluate-column";
import { type Input, partsOf, type Quantity, type Step, type Sum } from "./quantity";

/** Columns worked on together, so that the values of all quantities between inputs and results stay in the cache. */
const BLOCK = 512;

export type Evaluated = {
  /** First column, the stated values, of every quantity. */
  stated: Map<Quantity, number>;
  /** All columns of the quantities that were to be kept. */
  kept: Map<Quantity, Column>;
};

/** Evaluates quantities over `length` columns, inputs given, and keeps all columns of those in `keep`. */
export function evaluateAll(
  keep: readonly Quantity[],
  inputColumn: (input: Input) => Column,
  length: number,
): Evaluated {
  const stated = new Map<Quantity, number>();
  const kept = new Map<Quantity, Column>();
  const current = new Map<Quantity, Column>();
  const full = new Map<Input, Column>();
  const varying: { quantity: Step | Sum; values: Float64Array; terms: Column[]; whole: Float64Array | null }[] = [];
  const wanted = new Set(keep);

  for (const quantity of inOrder(keep)) {
    const terms = partsOf(quantity).map((each) => current.get(each) as Column);
    if (quantity.kind === "input") {
      const column = inputColumn(quantity);
      full.set(quantity, column);
      current.set(quantity, column.stride === 1 ? { values: new Float64Array(BLOCK), stride: 1 } : column);
      if (wanted.has(quantity)) kept.set(quantity, column);
      stated.set(quantity, column.values[0] as number);
    } else if (terms.every((each) => each.stride === 0)) {
      const column: Column = { values: new Float64Array(1), stride: 0 };
      evaluateColumn(quantity, terms, column.values);
      current.set(quantity, column);
      if (wanted.has(quantity)) kept.set(quantity, column);
      stated.set(quantity, column.values[0] as number);
    } else {
      const values = new Float64Array(BLOCK);
      const whole = wanted.has(quantity) ? new Float64Array(length) : null;
      current.set(quantity, { values, stride: 1 });
      if (whole) kept.set(quantity, { values: whole, stride: 1 });
      varying.push({ quantity, values, terms, whole });
    }
  }

  const drawn = [...full].filter(([, column]) => column.stride === 1);
  for (let start = 0; start < length; start += BLOCK) {
    const end = Math.min(length, start + BLOCK);
    for (const [input, column] of drawn) {
      (current.get(input) as Column).values.set(column.values.subarray(start, end));
    }
    for (const { quantity, values, terms, whole } of varying) {
      evaluateColumn(quantity, terms, values);
      whole?.set(end - start === BLOCK ? values : values.subarray(0, end - start), start);
      if (start === 0) stated.set(quantity, values[0] as number);
    }
  }
  return { stated, kept };
}

/** Quantities with every one after those it is made of. */
export function inOrder(roots: readonly Quantity[]): Quantity[] {
  const seen = new Set<Quantity>();
  const order: Quantity[] = [];
  const visit = (quantity: Quantity): void => {
    if (seen.has(quantity)) return;
    seen.add(quantity);
    for (const each of partsOf(quantity)) visit(each);
    order.push(quantity);
  };
  for (const each of roots) visit(each);
  return order;
}
