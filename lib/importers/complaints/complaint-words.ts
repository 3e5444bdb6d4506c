/** What a complaint in free text is about. */
export const COMPLAINT_KINDS = ["cold", "hot", "other"] as const;
export type ComplaintKind = (typeof COMPLAINT_KINDS)[number];

/** Words and phrases by what they mean; whoever imports may change them. Lower case, whole words only. */
export type ComplaintWords = { cold: readonly string[]; hot: readonly string[] };

/** Judgement, no source. `not cold` and the like stand with what they say, since the longer phrase is found first. */
export const COMPLAINT_WORDS: ComplaintWords = {
  cold: [
    "cold",
    "colder than",
    "freezing",
    "frozen",
    "chilly",
    "chilled",
    "cool",
    "too cool",
    "shivering",
    "icy",
    "draughty",
    "drafty",
    "no heat",
    "no heating",
    "heating off",
    "heating not working",
    "not warm",
    "overcooled",
    "overcooling",
  ],
  hot: [
    "hot",
    "warm",
    "too warm",
    "stifling",
    "sweating",
    "sweltering",
    "boiling",
    "roasting",
    "overheating",
    "overheated",
    "no cooling",
    "no air conditioning",
    "cooling not working",
    "not cool",
    "not cold",
  ],
};

export type ComplaintReading = { kind: ComplaintKind; matched: string[] };

/**
 * Reads a text by the list: the longest phrases first, each found once and then taken out, so that "not cold" is not read
 * as "cold" too. A text with words of both kinds, or with none, is `other`: a person has to look.
 */
export function readComplaint(text: string, words: ComplaintWords): ComplaintReading {
  const phrases = (["cold", "hot"] as const)
    .flatMap((kind) => words[kind].map((phrase) => ({ kind, phrase: normal(phrase) })))
    .filter(({ phrase }) => phrase !== "")
    .sort((a, b) => b.phrase.length - a.phrase.length || (a.phrase < b.phrase ? -1 : 1));
  let left = ` ${normal(text)} `;
  const found: typeof phrases = [];
  for (const each of phrases) {
    const parts = left.split(` ${each.phrase} `);
    if (parts.length < 2) continue;
    found.push(each);
    left = parts.join(" | ");
  }
  const kinds = new Set(found.map(({ kind }) => kind));
  const [only] = kinds;
  return {
    kind: only !== undefined && kinds.size === 1 ? only : "other",
    matched: found.map(({ phrase }) => phrase),
  };
}

const normal = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
