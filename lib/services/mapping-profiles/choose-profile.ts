import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import { fitOf, overlapOf, type ProfileFit } from "./profile-fit";
import type { KnownProfile } from "./settle";

/** `others` are the names of further profiles that fit as well. */
export type ChosenProfile = ProfileFit & { others: string[] };

/** A profile that knows fewer of a file's points than this share was made for another source. */
const LEAST_OVERLAP = 0.5;

/**
 * The profile to read a file by: of those that fit wholly the newest, else the one that parts least from the file
 * while it knows half of its points. `newestFirst` holds the newest version of each profile in use.
 */
export function chooseProfile(newestFirst: readonly KnownProfile[], inspection: TrendInspection): ChosenProfile | null {
  const fits = newestFirst.map((profile) => fitOf(profile, inspection));
  const whole = fits.filter((fit) => fit.differences.length === 0);
  const [first, ...others] = whole;
  if (first) return { ...first, others: others.map((fit) => fit.version.name) };
  const near = fits
    .filter((fit) => overlapOf(fit.content, inspection) >= LEAST_OVERLAP)
    .sort((a, b) => a.differences.length - b.differences.length);
  return near[0] ? { ...near[0], others: [] } : null;
}
