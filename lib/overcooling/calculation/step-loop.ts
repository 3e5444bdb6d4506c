import type { Step } from "./quantity";

/** A term of a step over a block: values of its own for each column, or one for all of them. */
export type BlockTerm = Float64Array | number;

/** A sum that grows by a part over a block. `begins` is what its constant parts come to where this is its first part. */
export type BlockSum = { values: Float64Array; begins: number | null };

export type StepLoop = (
  count: number,
  into: Float64Array,
  compute: Step["compute"],
  terms: readonly BlockTerm[],
  sums: readonly BlockSum[],
) => void;

const loops = new Map<string, Map<string, StepLoop>>();
let made = 0;

/**
 * The loop that calls a step's `compute` for each column of a block and adds the value to the sums it is part of. Each
 * formula, and each pattern of terms and sums, gets a loop of its own, made once: a loop that all formulas share calls
 * functions that the compiler cannot inline, which costs seven times as much, and adding up in a loop of its own reads
 * every value once more. The formula only names the loop; what is computed is `compute`, whatever the name.
 */
export function stepLoop(step: Step, terms: readonly BlockTerm[], sums: readonly BlockSum[]): StepLoop {
  let pattern = "";
  for (const each of terms) pattern += typeof each === "number" ? "1" : "n";
  for (const each of sums) pattern += each.begins === null ? "+" : "=";
  let known = loops.get(step.formula);
  if (!known) {
    known = new Map();
    loops.set(step.formula, known);
  }
  let loop = known.get(pattern);
  if (!loop) {
    loop = makeLoop(pattern, made++);
    known.set(pattern, loop);
  }
  return loop;
}

/**
 * Writes `v = compute(t0[i], t1, ...); into[i] = v; s0[i] += v`: the text holds nothing but places of terms and sums and a
 * number. Without the number the engine would find the same text again and hand out the same loop.
 */
function makeLoop(pattern: string, number: number): StepLoop {
  const terms = [...pattern].filter((each) => each === "1" || each === "n");
  const adding = [...pattern].slice(terms.length);
  const names = terms.map((_, k) => `t${k}`);
  const values = terms.map((each, k) => (each === "n" ? `t${k}[i]` : `t${k}`));
  const sums = adding.map((_, k) => `const s${k} = sums[${k}].values, b${k} = sums[${k}].begins;`);
  const adds = adding.map((each, k) => (each === "=" ? `s${k}[i] = b${k} + v;` : `s${k}[i] += v;`));
  const body = `/* ${number} */ const [${names.join(", ")}] = terms;
${sums.join("\n")}
for (let i = 0; i < count; i++) { const v = compute(${values.join(", ")}); into[i] = v; ${adds.join(" ")} }`;
  return new Function("count", "into", "compute", "terms", "sums", body) as StepLoop;
}
