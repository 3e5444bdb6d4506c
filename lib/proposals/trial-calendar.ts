import { seededRandom } from "@/lib/statistics/random";
import { dayNumberFromLocalDate, type LocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import type { Switchback } from "./trial-plan";

/** The setting of a week of a switchback. */
export const SETTING_WORDS = { present: "as it is", proposed: "as proposed" } as const;

export type TrialWeek = { week: number; pair: number; setting: "present" | "proposed" };

/**
 * Weeks of a switchback: in each pair one week with the present and one with the proposed setting, which of them first
 * drawn by the seed. The order can be drawn again by anyone, and chosen by nobody.
 */
export function trialOrder({ pairs, seed }: Pick<Switchback, "pairs" | "seed">): TrialWeek[] {
  const random = seededRandom(seed);
  return Array.from({ length: pairs }, (_, pair) => {
    const settings = random() < 0.5 ? (["present", "proposed"] as const) : (["proposed", "present"] as const);
    return settings.map((setting, k): TrialWeek => ({ week: 2 * pair + k, pair, setting }));
  }).flat();
}

/** A week of the calendar, both ends included; `countsFrom` is its first day after the washout. */
export type CalendarWeek = TrialWeek & { from: LocalDate; to: LocalDate; countsFrom: LocalDate };

const WEEK_DAYS = 7;
/** First days of a week that are left out while the building settles (reference G6). */
export const WASHOUT_DAYS = 1;

/** The drawn weeks with their days from a first day on. Throws on a day that there is none of. */
export function trialCalendar(trial: Pick<Switchback, "pairs" | "seed">, beginsOn: LocalDate): CalendarWeek[] {
  const first = dayNumberFromLocalDate(beginsOn);
  if (first === null) throw new RangeError(`${beginsOn} is no date`);
  return trialOrder(trial).map((each) => {
    const day = (offset: number): LocalDate => localDateFromDayNumber(first + WEEK_DAYS * each.week + offset);
    return { ...each, from: day(0), to: day(WEEK_DAYS - 1), countsFrom: day(WASHOUT_DAYS) };
  });
}
