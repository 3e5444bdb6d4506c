import type { CircuitRelief } from "@/lib/proposals/live-circuit";

const circuitCount = (count: number): string => (count === 1 ? "1 circuit" : `${count} circuits`);

/** How many circuits the heaters hang on, and which of them come below their planning limit. */
export function circuitsSentence(circuits: readonly CircuitRelief[], variant: string): string {
  const named = (outcome: CircuitRelief["outcome"]): string[] =>
    circuits.filter((each) => each.outcome === outcome).map(({ name }) => name);
  const below = named("below-as-expected");
  const perhaps = named("below-if-all-go");
  const above = named("stays-above");
  const parts = [
    below.length > 0 ? `${below.join(", ")} ${below.length === 1 ? "falls" : "fall"} below the planning limit` : "",
    perhaps.length > 0 ? `${perhaps.join(", ")} only if all of these heaters go` : "",
    above.length > 0 ? `${above.join(", ")} not even then` : "",
  ].filter(Boolean);
  const what =
    parts.length > 0 ? parts.join("; ") : "none of them is above its planning limit today as far as is known";
  return `Heaters of these zones hang on ${circuitCount(circuits.length)}. With ${variant}: ${what}. A licensed electrician judges a circuit, under the code in force there.`;
}
