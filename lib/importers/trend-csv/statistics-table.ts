import * as heading from "./heading-words";
import { splitUnit } from "./units";

/** Columns of a table whose rows sum up an interval, by heading; `proposal` is the one to take. */
export type StatisticsTable = { choices: string[]; proposal: string; columns: Map<string, number> };

/** Recognises a table of nothing but average, minimum, maximum and the like; null for any other. */
export function readStatistics(free: readonly number[], headingOf: (column: number) => string): StatisticsTable | null {
  const columns = new Map<string, number>();
  let average: string | null = null;
  let others = 0;
  for (const column of free) {
    const { name } = splitUnit(headingOf(column));
    if (heading.isAverageHeading(name)) average ??= name;
    else if (heading.isExtremeHeading(name)) others++;
    else if (heading.isSpreadHeading(name) || heading.isCountHeading(name)) continue;
    else return null;
    columns.set(name, column);
  }
  if (others === 0 || columns.size < 2) return null;
  const choices = [...columns.keys()];
  return { choices, proposal: average ?? (choices[0] as string), columns };
}
