import type { Step } from "./quantity";

/** A term of a step over a block: values of its own for each draw, or one for all of them. */
export type BlockTerm = Float64Array | number;
export type StepLoop = (into: Float64Array, compute: Step["compute"], terms: readonly BlockTerm[]) => void;

const loops = new Map<string, StepLoop>();

/**
 * The loop that calls a step's `compute` for each value of a block. Each formula, and each pattern of terms with and
 * without values of their own, gets a loop of its own, made once: a loop that all formulas share calls functions that
 * the compiler cannot inline, which costs seven times as much. The formula only names the loop; what is computed is
 * `compute`, whatever the name.
 */
export function stepLoop(step: Step, terms: readonly BlockTerm[]): StepLoop {
  const pattern = terms.map((each) => (typeof each === "number" ? "1" : "n")).join("");
  const name = `${pattern} ${step.formula}`;
  const known = loops.get(name);
  if (known) return known;
  const made = makeLoop(pattern, loops.size);
  loops.set(name, made);
  return made;
}

/**
 * Writes `into[i] = compute(t0[i], t1, ...)`: the text holds nothing but places of terms and a number. Without the number
 * the engine would find the same text again and hand out the same loop.
 */
function makeLoop(pattern: string, number: number): StepLoop {
  const names = [...pattern].map((_, k) => `t${k}`);
  const values = [...pattern].map((each, k) => (each === "n" ? `t${k}[i]` : `t${k}`));
  const body = `/* ${number} */ const [${names.join(", ")}] = terms;
const count = into.length;
for (let i = 0; i < count; i++) into[i] = compute(${values.join(", ")});`;
  return new Function("into", "compute", "terms", body) as StepLoop;
}
