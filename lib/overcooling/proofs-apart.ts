import type { ProvenSaving } from "./assessment-input";

/**
 * Proofs that each have days of their own, and the titles of those that have not: where two changes were read off one meter
 * over the same days, each claims what both saved, and neither can be told from the other.
 */
export function proofsApart(all: readonly ProvenSaving[]): { proofs: ProvenSaving[]; onSameDays: string[] } {
  const meets = (one: ProvenSaving, other: ProvenSaving): boolean =>
    one !== other &&
    one.window !== null &&
    other.window !== null &&
    one.window.from <= other.window.to &&
    other.window.from <= one.window.to;
  const isApart = (each: ProvenSaving): boolean => !all.some((other) => meets(each, other));
  return {
    proofs: all.filter(isApart),
    onSameDays: all.filter((each) => !isApart(each)).map(({ title }) => title),
  };
}
