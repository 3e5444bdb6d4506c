import type { Working } from "@/lib/working/working";

/** Functions of workings that a spreadsheet has under the same name. */
const FUNCTIONS = new Set(["min", "max", "exp", "abs", "sqrt"]);
const TOKEN = /\s*([A-Za-zΑ-ωη][\w'.]*(?:_\{[^}]*\})?|\d+(?:\.\d+)?|[-+*/^(),])/uy;

/**
 * The right side of a working's formula as a spreadsheet's formula, its symbols replaced by the cells of the terms
 * (`cells` in their order); null where it holds anything else. Sums of terms become one SUM.
 */
export function formulaOfWorking({ formula, terms }: Working, cells: readonly string[]): string | null {
  const right = formula.slice(formula.indexOf("=") + 1).trim();
  if (/^sum of /.test(right)) {
    if (terms.length === 0) return null;
    return `SUM(${cells[0]}:${cells[terms.length - 1]})`;
  }
  const places = new Map(terms.map(({ symbol }, at) => [symbol, cells[at] as string]));
  if (places.size !== terms.length) return null;
  let written = "";
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < right.length) {
    const [, token] = TOKEN.exec(right) ?? [];
    if (token === undefined) return null;
    const place = places.get(token);
    if (place !== undefined) written += place;
    else if (FUNCTIONS.has(token)) written += token.toUpperCase();
    else if (/^[A-Za-zΑ-ωη]/u.test(token)) return null;
    else written += token;
  }
  return written === "" ? null : written;
}
