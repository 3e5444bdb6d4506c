import type { PlugLogFigures } from "./plug-log-figures";

/**
 * The figures as they stay once the raw readings are deleted: days in the order of their energy without their dates, the
 * longest run without its beginning, no rows of the file. What a season needs of them is still there.
 */
export function withoutDates(figures: PlugLogFigures): PlugLogFigures {
  const days = figures.days.map((day) => ({ ...day, date: null }));
  days.sort((a, b) => Number(b.isOccupied) - Number(a.isOccupied) || a.energyKwh - b.energyKwh);
  const run = figures.longestFullRun;
  return { ...figures, days, longestFullRun: run && { ...run, fromMs: null }, notes: [] };
}
