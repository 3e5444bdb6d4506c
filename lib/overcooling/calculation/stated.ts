import type { Graph } from "./graph";

/** Values by place with every input at its stated value. */
export function statedValues({ order, parts: { places, from } }: Graph): Float64Array {
  const values = new Float64Array(order.length);
  order.forEach((quantity, place) => {
    const [first, end] = [from[place] as number, from[place + 1] as number];
    if (quantity.kind === "input") {
      values[place] = quantity.value;
    } else if (quantity.kind === "step") {
      const terms: number[] = [];
      for (let k = first; k < end; k++) terms.push(values[places[k] as number] as number);
      values[place] = quantity.compute(...terms);
    } else {
      let total = 0;
      for (let k = first; k < end; k++) total += values[places[k] as number] as number;
      values[place] = total;
    }
  });
  return values;
}
