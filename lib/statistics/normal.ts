import type { RandomSource } from "./random";

/** A pair of independent draws of the standard normal distribution (Box & Muller 1958). */
export function normalPair(random: RandomSource): [number, number] {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  const angle = 2 * Math.PI * random();
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}
