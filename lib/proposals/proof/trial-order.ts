import { seededRandom } from "@/lib/statistics/random";

export type TrialWeek = { week: number; pair: number; setting: "present" | "proposed" };

/**
 * Weeks of a switchback: in each pair one week with the present and one with the proposed setting, which of them first
 * drawn by the seed. The order can be drawn again by anyone, and chosen by nobody.
 */
export function trialOrder({ pairs, seed }: { pairs: number; seed: number }): TrialWeek[] {
  const random = seededRandom(seed);
  return Array.from({ length: pairs }, (_, pair) => {
    const settings = random() < 0.5 ? (["present", "proposed"] as const) : (["proposed", "present"] as const);
    return settings.map((setting, k): TrialWeek => ({ week: 2 * pair + k, pair, setting }));
  }).flat();
}
