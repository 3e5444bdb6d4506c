/** The seven-point thermal sensation scale of ISO 7730 and ASHRAE 55, warmest first. */
export const VOTE_LABEL: readonly { vote: number; label: string }[] = [
  { vote: 3, label: "Hot" },
  { vote: 2, label: "Warm" },
  { vote: 1, label: "Slightly warm" },
  { vote: 0, label: "Neutral" },
  { vote: -1, label: "Slightly cool" },
  { vote: -2, label: "Cool" },
  { vote: -3, label: "Cold" },
];

/** A vote in words with its sign, such as "Cool (−2)". */
export function voteWords(vote: number): string {
  const label = VOTE_LABEL.find((each) => each.vote === vote)?.label ?? "";
  const sign = vote > 0 ? "+" : vote < 0 ? "\u2212" : "";
  return `${label} (${sign}${Math.abs(vote)})`;
}
