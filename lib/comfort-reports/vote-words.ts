import { VOTE_LABEL } from "./thermal-sensation";

const VOTE_OF_WORD: ReadonlyMap<string, number> = new Map(
  VOTE_LABEL.flatMap(({ vote, label }) =>
    [label.toLowerCase(), label.toLowerCase().replace(" ", "-"), String(vote), `+${vote}`].map(
      (word) => [word, vote] as const,
    ),
  ),
);

/** A vote from its number or its word on the scale, such as "-2" or "slightly cool"; null for anything else. */
export const voteOfWord = (word: string): number | null => VOTE_OF_WORD.get(word.trim().toLowerCase()) ?? null;

/** Wishes by what people type for them. */
export const PREFERENCE_OF_WISH: ReadonlyMap<string, "cooler" | "no-change" | "warmer"> = new Map([
  ["cooler", "cooler"],
  ["warmer", "warmer"],
  ["no-change", "no-change"],
  ["no change", "no-change"],
]);
