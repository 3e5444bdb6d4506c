import { seedFromText, uniformAt } from "@/lib/statistics/random";
import { triangularQuantile } from "@/lib/statistics/triangular";
import type { Columns } from "./program";
import type { Input } from "./quantity";

/**
 * Draws of an input from its triangular range. Each input has a stream of its own, by `seedFromText(id) ^ seed`, so that
 * it gets the same draws in every study of a seed, whatever else is in it. `draws` are numbers of draws; without it
 * they count from the first.
 */
export function drawing(seed: number, draws?: Int32Array): Columns["fillInput"] {
  return (input, into, start) => {
    const stream = streamOf(input, seed);
    const shape = { low: input.low, mode: input.value, high: input.high };
    if (draws) {
      for (let i = 0; i < into.length; i++)
        into[i] = triangularQuantile(shape, uniformAt(stream, draws[start + i] ?? 0));
    } else {
      for (let i = 0; i < into.length; i++) into[i] = triangularQuantile(shape, uniformAt(stream, start + i));
    }
  };
}

const streamOf = (input: Input, seed: number): number => seedFromText(input.id) ^ seed;
