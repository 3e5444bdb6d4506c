import { civilFromDayNumber, dayNumber } from "@/lib/time/civil-date";

/** Tone of a day by the share of its expected samples, from pale (all there) to ink (none). */
export type CoverageTone = "complete" | "most" | "little" | "none";

/** From this share on a day counts as complete: some samples are always lost on their way. Judgement, no source. */
export const COMPLETE_SHARE = 0.95;

export function coverageTone(share: number): CoverageTone {
  if (share >= COMPLETE_SHARE) return "complete";
  if (share >= 0.5) return "most";
  return share > 0 ? "little" : "none";
}

/** Days of one tone next to each other: first day of the block and number of days. */
export type ToneRun = { from: number; days: number; tone: CoverageTone };

/** The days of an array from one index to before another as runs of one tone, counted from `from`. */
export function toneRuns(shares: ArrayLike<number>, from: number, to: number): ToneRun[] {
  const runs: ToneRun[] = [];
  for (let k = from; k < to; k++) {
    const tone = coverageTone(shares[k] as number);
    const last = runs.at(-1);
    if (last?.tone === tone) last.days++;
    else runs.push({ from: k - from, days: 1, tone });
  }
  return runs;
}

/** A quarter of a year of the calendar: where its record begins and ends among the days, and where its months begin. */
export type CalendarBlock = {
  /** Index of the first and after the last day of the record in this quarter. */
  from: number;
  to: number;
  /** Days of the quarter before the record begins. */
  before: number;
  months: { name: string; at: number }[];
};

/** Days of the longest quarter: every block has this width, so that a day is as wide in all. */
export const BLOCK_DAYS = 92;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** Quarters of the years that a record of `dayCount` days from a day number touches. */
export function calendarBlocks(firstDay: number, dayCount: number): CalendarBlock[] {
  const blocks: CalendarBlock[] = [];
  let day = firstDay;
  while (day < firstDay + dayCount) {
    const { year, month } = civilFromDayNumber(day);
    const firstMonth = Math.floor((month - 1) / 3) * 3 + 1;
    const start = dayNumber(year, firstMonth, 1);
    const end = firstMonth === 10 ? dayNumber(year + 1, 1, 1) : dayNumber(year, firstMonth + 3, 1);
    const until = Math.min(end, firstDay + dayCount);
    const months = [0, 1, 2].map((k) => ({
      name: k === 0 ? `${MONTHS[firstMonth - 1]} ${year}` : (MONTHS[firstMonth - 1 + k] as string),
      at: dayNumber(year, firstMonth + k, 1) - start,
    }));
    blocks.push({ from: day - firstDay, to: until - firstDay, before: day - start, months });
    day = until;
  }
  return blocks;
}
