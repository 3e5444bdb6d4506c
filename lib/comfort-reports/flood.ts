/** What becomes of a report: it counts, it is kept aside for somebody to look at, or it is refused. */
export type ReportFate = "taken" | "held" | "refused";

/** How many reports an hour are taken, and how many in all are kept. */
type Limit = { taken: number; kept: number };

/**
 * A zone's link is used by tens of people, an office's whole network often has one address: the limit of an address is
 * the wider one. What comes first is taken; what comes after is kept aside, so that an honest report in a flood is not lost,
 * up to a second limit that keeps the flood from filling the disk. Judgement, no source.
 */
export const REPORT_LIMITS: { link: Limit; address: Limit } = {
  link: { taken: 30, kept: 60 },
  address: { taken: 120, kept: 180 },
};

/** The fate of the next report, by how many came within the hour before; `ofAddress` is null where no address is known. */
export function fateOf(sent: { ofLink: number; ofAddress: number | null }): ReportFate {
  const within = (which: keyof Limit): boolean =>
    sent.ofLink < REPORT_LIMITS.link[which] &&
    (sent.ofAddress === null || sent.ofAddress < REPORT_LIMITS.address[which]);
  if (within("taken")) return "taken";
  return within("kept") ? "held" : "refused";
}
