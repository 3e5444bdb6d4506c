import type { Graph } from "./graph";

/** Values by place with every input at its stated value. */
export function statedValues({ order, parts }: Graph): Float64Array {
  const values = new Float64Array(order.length);
  order.forEach((quantity, place) => {
    const terms = parts[place] as readonly number[];
    if (quantity.kind === "input") values[place] = quantity.value;
    else if (quantity.kind === "step") values[place] = quantity.compute(...terms.map((each) => values[each] as number));
    else for (const each of terms) values[place] = (values[place] as number) + (values[each] as number);
  });
  return values;
}
