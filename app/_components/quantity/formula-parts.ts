/** A piece of a formula for typesetting. */
export type FormulaPart =
  | { kind: "symbol"; base: string; sub: string; symbol: string }
  | { kind: "power"; text: string }
  | { kind: "plain"; text: string };

const NAME = /^[\p{L}][\p{L}\p{N}]*(?:_(?:\{[^}]*\}|[\p{L}\p{N},]+(?:_[\p{L}\p{N}]+)*))?/u;
const NUMBER = /^\d[\d,]*(?:\.\d+)?(?:e[+-]?\d+)?/i;
const POWER = /^\^(?:\(([^)]*)\)|(-?[\p{L}\p{N}.]+))/u;
const SIGNS: Record<string, string> = { "*": "\u2009·\u2009", "-": "\u2212", "<=": "≤", ">=": "≥" };

/** Base and subscript of a symbol: `c_p` is c with subscript p. */
export function symbolParts(symbol: string): { base: string; sub: string } {
  const at = symbol.indexOf("_");
  if (at <= 0) return { base: symbol, sub: "" };
  return {
    base: symbol.slice(0, at),
    sub: symbol
      .slice(at + 1)
      .replace(/[{}]/g, "")
      .replace(/_/g, " "),
  };
}

/**
 * Splits a plain-text formula into symbols, powers and the rest. Names that are among `symbols` are symbols, and so
 * are single letters and names with a subscript; longer words (min, max, sum) stay upright.
 */
export function formulaParts(formula: string, symbols: readonly string[]): FormulaPart[] {
  const known = [...symbols].sort((a, b) => b.length - a.length);
  const parts: FormulaPart[] = [];
  const plain = (text: string): void => {
    const last = parts[parts.length - 1];
    if (last?.kind === "plain") last.text += text;
    else parts.push({ kind: "plain", text });
  };
  let rest = formula;
  while (rest !== "") {
    const name = NAME.exec(rest)?.[0] ?? "";
    const symbol = known.find((each) => rest.startsWith(each) && !continues(rest.slice(each.length)));
    const power = POWER.exec(rest);
    const number = NUMBER.exec(rest)?.[0];
    if (symbol) {
      parts.push({ kind: "symbol", symbol, ...symbolParts(symbol) });
      rest = rest.slice(symbol.length);
    } else if (name) {
      const isSymbol = [...name].length === 1 || name.includes("_");
      if (isSymbol) parts.push({ kind: "symbol", symbol: name, ...symbolParts(name) });
      else plain(name);
      rest = rest.slice(name.length);
    } else if (power) {
      parts.push({ kind: "power", text: (power[1] ?? power[2] ?? "").replace("-", "\u2212") });
      rest = rest.slice(power[0].length);
    } else if (number) {
      plain(number);
      rest = rest.slice(number.length);
    } else {
      const pair = rest.slice(0, 2);
      const sign = SIGNS[pair] ? pair : rest.slice(0, 1);
      const spaced = sign === "*" && rest.startsWith("* ");
      if (spaced) trimEnd(parts);
      plain(SIGNS[sign] ?? sign);
      rest = rest.slice(sign.length);
      if (spaced) rest = rest.trimStart();
    }
  }
  return parts;
}

const continues = (rest: string): boolean => /^[\p{L}\p{N}_]/u.test(rest);

function trimEnd(parts: FormulaPart[]): void {
  const last = parts[parts.length - 1];
  if (last?.kind === "plain") last.text = last.text.trimEnd();
}
