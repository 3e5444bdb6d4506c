import { counted } from "@/lib/units/counted";
import { type Disclosure, LEAST_PEOPLE } from "./disclose-counts";
import { leastPeople } from "./least-people";

/** What stands in a table for a count that is not shown by itself. */
export const MERGED_CELL = "merged";

/** A count, or what stands for one that may not be shown. */
export const countOrMerged = (count: number | null): string => (count === null ? MERGED_CELL : String(count));

/** What a table says of counts that it does not show by themselves; empty where it shows all. */
export function mergedNote(
  { hidden, together }: Pick<Disclosure<unknown, "cold" | "hot">, "hidden" | "together">,
  least: number = LEAST_PEOPLE.screen,
): string {
  if (hidden.size === 0) return "";
  const figures = [
    together.cold === null ? "" : `${together.cold} cold`,
    together.hot === null ? "" : `${together.hot} hot`,
  ].filter((words) => words !== "");
  const sums =
    figures.length > 0
      ? `: together ${figures.join(" and ")}`
      : ", nor is their sum, from which single ones could be told";
  return `Reports of ${counted(hidden.size, "zone")} are not shown by themselves, since fewer than ${least} people reported there or the total would tell theirs${sums}. Open reports stand in the inbox one by one.`;
}

/** How many reports came on a day, by the desk of each; of fewer than five people no more is said than that. */
export function countOfDay(desks: readonly (number | string | null)[]): string {
  const people = leastPeople(desks);
  return people > 0 && people < LEAST_PEOPLE.screen ? `under ${LEAST_PEOPLE.screen}` : String(desks.length);
}
