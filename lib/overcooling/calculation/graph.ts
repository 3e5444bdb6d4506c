import type { Input, Quantity } from "./quantity";

/** Lists of places, one after the other: list `k` is `places` from `from[k]` up to `from[k + 1]`. */
export type PlaceLists = { places: Int32Array; from: Int32Array };

/** Quantities under some roots, numbered so that every one comes after those it is made of. */
export type Graph = {
  order: readonly Quantity[];
  place(quantity: Quantity): number;
  /** Places of what a place is made of, in the order of its terms. */
  parts: PlaceLists;
  /** Places made of a place; one that uses it twice stands twice. */
  dependents: PlaceLists;
  /** 1 where a place depends on an uncertain input. */
  varies: Uint8Array;
};

export const isUncertain = (input: Input): boolean => input.high > input.low;

export function graphOf(roots: readonly Quantity[]): Graph {
  const order: Quantity[] = [];
  const places = new Map<Quantity, number>();
  const under: number[] = [];
  const starts: number[] = [0];
  const open: number[] = [];
  const visit = (quantity: Quantity): number => {
    const known = places.get(quantity);
    if (known !== undefined) return known;
    const first = open.length;
    if (quantity.kind === "step") for (const each of quantity.terms) open.push(visit(each));
    else if (quantity.kind === "sum") for (const each of quantity.parts) open.push(visit(each.quantity));
    for (let k = first; k < open.length; k++) under.push(open[k] as number);
    open.length = first;
    const place = order.push(quantity) - 1;
    places.set(quantity, place);
    starts.push(under.length);
    return place;
  };
  for (const each of roots) visit(each);

  const parts = { places: new Int32Array(under), from: new Int32Array(starts) };
  const place = (quantity: Quantity): number => {
    const known = places.get(quantity);
    if (known === undefined) throw new Error(`"${quantity.label}" is not part of this study`);
    return known;
  };
  return { order, place, parts, dependents: turnedAround(parts), varies: varyingPlaces(order, parts) };
}

/** For every place the lists that it stands in, in ascending order. */
function turnedAround({ places, from }: PlaceLists): PlaceLists {
  const count = from.length - 1;
  const starts = new Int32Array(count + 1);
  for (const part of places) starts[part + 1] = (starts[part + 1] as number) + 1;
  for (let k = 0; k < count; k++) starts[k + 1] = (starts[k + 1] as number) + (starts[k] as number);
  const next = starts.slice();
  const lists = new Int32Array(places.length);
  for (let place = 0; place < count; place++) {
    for (let k = from[place] as number; k < (from[place + 1] as number); k++) {
      const part = places[k] as number;
      lists[next[part] as number] = place;
      next[part] = (next[part] as number) + 1;
    }
  }
  return { places: lists, from: starts };
}

function varyingPlaces(order: readonly Quantity[], { places, from }: PlaceLists): Uint8Array {
  const varies = new Uint8Array(order.length);
  for (let place = 0; place < order.length; place++) {
    const quantity = order[place] as Quantity;
    if (quantity.kind === "input") varies[place] = isUncertain(quantity) ? 1 : 0;
    for (let k = from[place] as number; k < (from[place + 1] as number); k++) {
      if (varies[places[k] as number] === 1) varies[place] = 1;
    }
  }
  return varies;
}

/** 1 for the places that some roots are made of, and for the roots. */
export function under({ order, parts }: Graph, roots: readonly number[]): Uint8Array {
  const marks = new Uint8Array(order.length);
  for (const root of roots) marks[root] = 1;
  for (let place = marks.length - 1; place >= 0; place--) {
    if (marks[place] === 0) continue;
    for (let k = parts.from[place] as number; k < (parts.from[place + 1] as number); k++)
      marks[parts.places[k] as number] = 1;
  }
  return marks;
}
