import { digitsOf, equipmentKey } from "./equipment-key";
import { nameWords } from "./name-words";

export type KnownZone = { id: number; code: string; name: string };

export type ZoneMatch =
  | { status: "one"; id: number; confidence: "high" | "medium" }
  | { status: "several" }
  | { status: "none" };

/** How a zone may stand in a point's name: the words of its code or of its name. */
type Spelling = { id: number; words: readonly string[] };

/** Zones by what finds them quickly in thousands of names. */
export type ZoneIndex = {
  /** By the last number of a spelling: every zone that can stand in a name shares one with it. */
  spellings: ReadonlyMap<string, readonly Spelling[]>;
  byKey: ReadonlyMap<string, readonly number[]>;
  /** Zones whose code is nothing but digits and marks, by its digits. */
  byDigits: ReadonlyMap<string, readonly number[]>;
};

export function indexZones(zones: readonly KnownZone[]): ZoneIndex {
  const spellings = new Map<string, Spelling[]>();
  const byKey = new Map<string, number[]>();
  const byDigits = new Map<string, number[]>();
  const add = <T>(map: Map<string, T[]>, key: string, value: T) => map.set(key, [...(map.get(key) ?? []), value]);
  for (const { id, code, name } of zones) {
    for (const words of [nameWords(code), nameWords(name)]) {
      const number = words.filter(isNumber).at(-1);
      if (number !== undefined) add(spellings, String(Number(number)), { id, words });
    }
    add(byKey, equipmentKey(code), id);
    if (/^[\d\W_]+$/.test(code)) add(byDigits, digitsOf(code), id);
  }
  return { spellings, byKey, byDigits };
}

/**
 * The zone that a point's name speaks of. First by the zone's code (or name) standing whole in it, then by equal
 * letters and digits of the equipment; several that fit are left to a person.
 */
export function matchZone(name: string, { spellings, byKey, byDigits }: ZoneIndex): ZoneMatch {
  const words = nameWords(name);
  const numbers = new Set(words.filter(isNumber).map((word) => String(Number(word))));
  const lengths = new Map<number, number>();
  for (const spelling of [...numbers].flatMap((number) => spellings.get(number) ?? [])) {
    const length = standsIn(words, spelling.words);
    if (length > 0) lengths.set(spelling.id, Math.max(length, lengths.get(spelling.id) ?? 0));
  }
  const longest = Math.max(0, ...lengths.values());
  const best = [...lengths].filter(([, length]) => length === longest).map(([id]) => id);
  if (best.length > 0) return oneOf(best, "high");
  const key = equipmentKey(name);
  if (!/\d/.test(key)) return { status: "none" };
  return oneOf(byKey.get(key) ?? byDigits.get(digitsOf(key)) ?? [], "medium");
}

function oneOf(ids: readonly number[], confidence: "high" | "medium"): ZoneMatch {
  const [id] = ids;
  if (id === undefined) return { status: "none" };
  return ids.length === 1 ? { status: "one", id, confidence } : { status: "several" };
}

const isNumber = (word: string | undefined): word is string => word !== undefined && /^\d+$/.test(word);

/** Length of `code` (in words, at least one of them a number) where it stands whole in `words`, else 0: VAV-2 is not in VAV-2-14. */
function standsIn(words: readonly string[], code: readonly string[]): number {
  if (code.length === 0 || !code.some(isNumber)) return 0;
  for (let at = 0; at + code.length <= words.length; at++) {
    if (!code.every((word, i) => sameWord(words[at + i] as string, word))) continue;
    if (isNumber(words[at + code.length]) && isNumber(code.at(-1))) continue;
    if (isNumber(words[at - 1]) && isNumber(code[0])) continue;
    return code.length;
  }
  return 0;
}

/** Equal but for leading zeros: zone 03 is zone 3. */
const sameWord = (a: string, b: string): boolean => a === b || (isNumber(a) && isNumber(b) && Number(a) === Number(b));
