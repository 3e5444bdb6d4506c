import { type RandomSource, seededRandom, seedFromText } from "@/lib/statistics/random";

/** A stream of its own for each thing that varies, so that changing one leaves the others as they were. */
export const streamOf = (name: string): RandomSource => seededRandom(seedFromText(`demo-building/${name}`));

/** A draw from the standard normal distribution (Box and Muller 1958). */
export function normal(random: RandomSource): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return radius * Math.cos(2 * Math.PI * random());
}

/** One of a list, each as likely. */
export function pick<T>(random: RandomSource, from: readonly [T, ...T[]]): T {
  return from[Math.floor(random() * from.length)] ?? from[0];
}
