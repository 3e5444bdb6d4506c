import type { Working } from "@/lib/working/working";
import { formatFigure } from "./format-figure";
import { type FormulaPart, formulaParts } from "./formula-parts";

const FUNCTIONS = new Set(["min", "max", "exp", "ln", "log", "sqrt", "abs"]);

/**
 * The right-hand side with the values put in, or null where that would not be a sum anyone can follow: more than one
 * equals sign, or words and symbols that are not among the terms.
 */
export function substitutedParts(working: Working): FormulaPart[] | null {
  const sides = working.formula.split("=");
  const right = sides[1];
  if (sides.length !== 2 || right === undefined || /[<>]/.test(working.formula)) return null;
  const values = new Map(working.terms.map((term) => [term.symbol, term.value]));
  const parts: FormulaPart[] = [];
  for (const part of formulaParts(right.trim(), [...values.keys()])) {
    if (part.kind === "symbol") {
      const value = values.get(part.symbol);
      if (value === undefined) return null;
      const text = formatFigure(value, { significant: 4 });
      parts.push({ kind: "plain", text: value < 0 ? `(${text})` : text });
      continue;
    }
    const words = part.text.match(/\p{L}{2,}/gu) ?? [];
    if (words.some((word) => !FUNCTIONS.has(word)) || (part.kind === "power" && /\p{L}/u.test(part.text))) return null;
    parts.push(part.kind === "plain" ? { kind: "plain", text: part.text.replace(/·/g, "×") } : part);
  }
  return parts;
}
