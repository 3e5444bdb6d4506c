/** Words that point names are run together from, as in ACTCLGSP. */
const PARTS = new Set(
  "act actual active eff effective cur current clg cool cooling htg heat heating reheat rht sp stpt setpt setpoint spt occ occupied occupancy unocc unoc unooc unoccupied sup supply disch discharge dis flo flow air zn zone avg average rm room space spc temp tmp temperature t o c dpr dmpr damper vlv valve out oa da ra ma sa ea min max cmd pos sts stat raum temperatur soll wert ist".split(
    " ",
  ),
);
/** Names that spell like parts run together but are words of their own. */
const WHOLE = new Set([
  "occupied",
  "occupancy",
  "unoccupied",
  "supply",
  "discharge",
  "heating",
  "cooling",
  "reheat",
  "oat",
  "dat",
  "rat",
  "mat",
  "sat",
  "temperature",
  "setpoint",
  "damper",
  "active",
  "average",
  "effective",
]);

/**
 * Words of a point name, in lower case: split at anything that is no letter or digit, between letter and digit, at
 * `aB` and `ABc`, and where known parts are run together. A zero written for the letter O (`0CC`) is read as the letter.
 */
export function nameWords(name: string): readonly string[] {
  const known = remembered.get(name);
  if (known) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const words = splitName(name);
  remembered.set(name, words);
  return words;
}

/** Names are asked for again and again while thousands of points are proposed for. */
const MOST_REMEMBERED = 20_000;
const remembered = new Map<string, readonly string[]>();

function splitName(name: string): string[] {
  return name
    .replace(/(?<![\p{L}\p{N}])0(?=cc)/giu, "O")
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .replace(/(\p{Lu}+)(\p{Lu}\p{Ll})/gu, "$1 $2")
    .replace(/(\p{L})(\d)/gu, "$1 $2")
    .replace(/(\d)(\p{L})/gu, "$1 $2")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "")
    .flatMap(partsOf)
    .reduce<string[]>((words, word) => {
      // `StPt` was split at its capitals.
      if (word === "pt" && (words.at(-1) === "st" || words.at(-1) === "set")) words[words.length - 1] = "stpt";
      else words.push(word);
      return words;
    }, []);
}

function partsOf(word: string): string[] {
  if (word.length < 4 || WHOLE.has(word) || PARTS.has(word)) return [word];
  return segment(word) ?? [word];
}

/** The word as known parts, longest first, or null. */
function segment(word: string): string[] | null {
  if (word === "") return [];
  for (let length = word.length; length > 0; length--) {
    const head = word.slice(0, length);
    if (!PARTS.has(head)) continue;
    const rest = segment(word.slice(length));
    if (rest) return [head, ...rest];
  }
  return null;
}
