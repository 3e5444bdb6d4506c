import { type Input, partsOf, type Quantity } from "./quantity";

/** Quantities under some roots, numbered so that every one comes after those it is made of. */
export type Graph = {
  order: readonly Quantity[];
  place(quantity: Quantity): number;
  /** Places of what a place is made of, in the order of its terms. */
  parts: readonly (readonly number[])[];
  /** Places made of a place; one that uses it twice stands twice. */
  dependents: readonly (readonly number[])[];
  /** 1 where a place depends on an uncertain input. */
  varies: Uint8Array;
};

export const isUncertain = (input: Input): boolean => input.high > input.low;

export function graphOf(roots: readonly Quantity[]): Graph {
  const order: Quantity[] = [];
  const places = new Map<Quantity, number>();
  const parts: number[][] = [];
  const visit = (quantity: Quantity): number => {
    const known = places.get(quantity);
    if (known !== undefined) return known;
    const under = partsOf(quantity).map(visit);
    const place = order.push(quantity) - 1;
    places.set(quantity, place);
    parts.push(under);
    return place;
  };
  for (const each of roots) visit(each);

  const dependents = order.map((): number[] => []);
  const varies = new Uint8Array(order.length);
  parts.forEach((under, place) => {
    const quantity = order[place] as Quantity;
    if (quantity.kind === "input") varies[place] = isUncertain(quantity) ? 1 : 0;
    for (const part of under) {
      dependents[part]?.push(place);
      if (varies[part] === 1) varies[place] = 1;
    }
  });
  const place = (quantity: Quantity): number => {
    const known = places.get(quantity);
    if (known === undefined) throw new Error(`"${quantity.label}" is not part of this study`);
    return known;
  };
  return { order, place, parts, dependents, varies };
}

/** 1 for the places that some roots are made of, and for the roots. */
export function under(graph: Graph, roots: readonly number[]): Uint8Array {
  const marks = new Uint8Array(graph.order.length);
  for (const root of roots) marks[root] = 1;
  for (let place = marks.length - 1; place >= 0; place--) {
    if (marks[place] === 1) for (const part of graph.parts[place] ?? []) marks[part] = 1;
  }
  return marks;
}
