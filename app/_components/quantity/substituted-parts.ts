import type { Working } from "@/lib/working/working";
import { type FormulaPart, formulaParts } from "./formula-parts";
import { termFigures } from "./working-figures";

const FUNCTIONS = new Set(["min", "max", "exp", "ln", "log", "sqrt", "abs"]);

/**
 * The right-hand side with the values put in, or null where that would not be a sum anyone can follow: more than one
 * equals sign, or words and symbols that are not among the terms.
 */
export function substitutedParts(working: Working): FormulaPart[] | null {
  const sides = working.formula.split("=");
  const right = sides[1];
  if (sides.length !== 2 || right === undefined || /[<>]/.test(working.formula)) return null;
  const figures = termFigures(working);
  const values = new Map(working.terms.map((term, i) => [term.symbol, { value: term.value, text: figures[i] ?? "" }]));
  const parts: FormulaPart[] = [];
  for (const part of formulaParts(right.trim(), [...values.keys()])) {
    if (part.kind === "symbol") {
      const known = values.get(part.symbol);
      if (known === undefined) return null;
      parts.push({ kind: "plain", text: known.value < 0 ? `(${known.text})` : known.text });
      continue;
    }
    const words = part.text.match(/\p{L}{2,}/gu) ?? [];
    if (words.some((word) => !FUNCTIONS.has(word)) || (part.kind === "power" && /\p{L}/u.test(part.text))) return null;
    parts.push(part.kind === "plain" ? { kind: "plain", text: part.text.replace(/·/g, "×") } : part);
  }
  return parts;
}
