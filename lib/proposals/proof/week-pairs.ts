import { mean } from "@/lib/statistics/moments";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import type { ProofDay } from "./comparable-days";
import type { WeekPair } from "./switchback-proof";
import { trialOrder } from "./trial-order";

/** First days of a week that are left out while the building settles. */
const WASHOUT_DAYS = 1;
const BIN_K = 3;

/**
 * Means of the weeks of a switchback that began on a day, pair by pair, without their washout day. Each day is taken less the
 * mean of all trial days of like outdoor air, plus the mean of all, so that a warm week is not a worse setting.
 */
export function weekPairs(
  days: readonly (ProofDay & { date: string })[],
  beginsOn: string,
  trial: { pairs: number; seed: number },
): WeekPair[] {
  const first = dayNumberFromLocalDate(beginsOn);
  if (first === null || days.length === 0) return [];
  const binOf = ({ outdoorC }: ProofDay): number => Math.floor(outdoorC / BIN_K);
  const bins = new Map<number, number[]>();
  for (const day of days) bins.set(binOf(day), [...(bins.get(binOf(day)) ?? []), day.value]);
  const all = mean(days.map((each) => each.value));
  const weeks = new Map<number, number[]>();
  for (const day of days) {
    const since = (dayNumberFromLocalDate(day.date) ?? first) - first;
    if (since < 0 || since % 7 < WASHOUT_DAYS) continue;
    const adjusted = day.value - mean(bins.get(binOf(day)) as number[]) + all;
    weeks.set(Math.floor(since / 7), [...(weeks.get(Math.floor(since / 7)) ?? []), adjusted]);
  }
  const order = trialOrder(trial);
  return Array.from({ length: trial.pairs }, (_, pair) => pair).flatMap((pair): WeekPair[] => {
    const of = (setting: "present" | "proposed"): number[] | undefined =>
      weeks.get(order.find((each) => each.pair === pair && each.setting === setting)?.week ?? -1);
    const [present, proposed] = [of("present"), of("proposed")];
    return present && proposed ? [{ present: mean(present), proposed: mean(proposed) }] : [];
  });
}
