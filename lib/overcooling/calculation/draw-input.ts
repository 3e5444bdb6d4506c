import { seedFromText, uniformAt } from "@/lib/statistics/random";
import { triangularQuantiles } from "@/lib/statistics/triangular";
import type { Columns } from "./program";

/**
 * Draws of an input from its triangular range. Each input has a stream of its own, by `seedFromText(id) ^ seed`, so that
 * it gets the same draws in every study of a seed, whatever else is in it. `draws` are numbers of draws; without it
 * they count from the first.
 */
export function drawing(seed: number, draws?: Int32Array): Columns["fillInput"] {
  return (input, into, start, count) => {
    const stream = seedFromText(input.id) ^ seed;
    if (draws) for (let i = 0; i < count; i++) into[i] = uniformAt(stream, draws[start + i] as number);
    else for (let i = 0; i < count; i++) into[i] = uniformAt(stream, start + i);
    triangularQuantiles({ low: input.low, mode: input.value, high: input.high }, into, count);
  };
}
