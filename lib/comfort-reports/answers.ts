/** What an occupant may add about when and where it is felt; words stand with each language. */
export const SINCE_WHEN = ["now", "today", "days", "season"] as const;
export type SinceWhen = (typeof SINCE_WHEN)[number];

export const BODY_PARTS = ["whole", "feet", "hands", "neck"] as const;
export type BodyPart = (typeof BODY_PARTS)[number];

/** The same for facilities people. */
export const SINCE_WORDS: Record<SinceWhen, string> = {
  now: "since just now",
  today: "since this morning",
  days: "for some days",
  season: "the whole season",
};

export const BODY_WORDS: Record<BodyPart, string> = {
  whole: "all over",
  feet: "feet and legs",
  hands: "hands",
  neck: "neck and shoulders",
};

/** The parts that were stored joined by commas. */
export const bodyPartsOf = (stored: string | null): BodyPart[] =>
  BODY_PARTS.filter((part) => stored?.split(",").includes(part));
