import type { Term, Working } from "@/lib/working/working";

/**
 * Works a formula out from its printed text and the printed values of its terms, as a reader with a pocket calculator
 * would: independent of the code that made the result. `null` for a formula over the hours of the weather year.
 */
export function evaluateFormula(working: Working): number | null {
  const right = working.formula.slice(working.formula.indexOf("=") + 1).trim();
  if (/ over the |^hours with/.test(right)) return null;
  if (/^sum of the \w+$/.test(right)) return working.terms.reduce((sum, each) => sum + each.value, 0);
  const script = substituted(right, working.terms).replaceAll("^", "**");
  if (!/^[\d\s.+\-*/(),e]*$/.test(script.replace(/Math\.(min|max)/g, "")))
    throw new Error(`"${working.formula}" names what is not among its terms: ${script}`);
  return Number(new Function(`return ${script}`)());
}

function substituted(formula: string, terms: readonly Term[]): string {
  const known = [...terms].sort((a, b) => b.symbol.length - a.symbol.length);
  let rest = formula;
  let written = "";
  while (rest !== "") {
    const term = known.find(
      (each) => rest.startsWith(each.symbol) && !/^[\p{L}\p{N}_]/u.test(rest.slice(each.symbol.length)),
    );
    const word = /^(min|max)\b/.exec(rest)?.[0];
    if (term) {
      written += `(${term.value})`;
      rest = rest.slice(term.symbol.length);
    } else if (word) {
      written += `Math.${word}`;
      rest = rest.slice(word.length);
    } else {
      written += rest[0];
      rest = rest.slice(1);
    }
  }
  return written;
}

/** A working and all those inside it. */
export const workingsIn = (working: Working): Working[] => [
  working,
  ...working.terms.flatMap((each) => (each.working ? workingsIn(each.working) : [])),
];
