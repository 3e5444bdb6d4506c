import { mean } from "@/lib/statistics/moments";
import type { CalendarWeek } from "../trial-calendar";
import type { ProofDay } from "./comparable-days";
import type { WeekPair } from "./switchback-proof";

const BIN_K = 3;

/**
 * Means of the weeks of a switchback, pair by pair of its calendar, without their washout day. Each day is taken less the mean
 * of all days of the calendar of like outdoor air, plus the mean of all, so that a warm week is not a worse setting.
 */
export function weekPairs(
  days: readonly (ProofDay & { date: string })[],
  calendar: readonly CalendarWeek[],
): WeekPair[] {
  const weekOf = ({ date }: { date: string }) =>
    calendar.find(({ countsFrom, to }) => date >= countsFrom && date <= to);
  const counted = days.filter((day) => weekOf(day) !== undefined);
  if (counted.length === 0) return [];
  const binOf = ({ outdoorC }: ProofDay): number => Math.floor(outdoorC / BIN_K);
  const bins = new Map<number, number[]>();
  for (const day of counted) bins.set(binOf(day), [...(bins.get(binOf(day)) ?? []), day.value]);
  const all = mean(counted.map((each) => each.value));
  const weeks = new Map<CalendarWeek | undefined, number[]>();
  for (const day of counted) {
    const adjusted = day.value - mean(bins.get(binOf(day)) as number[]) + all;
    weeks.set(weekOf(day), [...(weeks.get(weekOf(day)) ?? []), adjusted]);
  }
  return [...new Set(calendar.map(({ pair }) => pair))].flatMap((pair): WeekPair[] => {
    const of = (setting: CalendarWeek["setting"]): number[] | undefined =>
      weeks.get(calendar.find((each) => each.pair === pair && each.setting === setting));
    const [present, proposed] = [of("present"), of("proposed")];
    return present && proposed ? [{ present: mean(present), proposed: mean(proposed) }] : [];
  });
}
