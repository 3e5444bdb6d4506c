import type { RandomSource } from "@/lib/statistics/random";
import type { DemoCalendar } from "./demo-calendar";
import { normal } from "./normal";

/** Chance that the holder of a desk comes in, Monday to Friday. Common practice, no source. */
const ATTENDANCE: Record<number, number> = { 1: 0.72, 2: 0.84, 3: 0.84, 4: 0.8, 5: 0.58 };
const LUNCH = { fromMinute: 12 * 60, toMinute: 13 * 60, awayShare: 0.55 };

/** When the holder of one desk sits at it: 1 in the steps of a day between an arrival and a leaving time. */
export function deskPresence(calendar: DemoCalendar, random: RandomSource): Uint8Array {
  const { span, day, weekday, minuteOfDay, occupied } = calendar;
  const present = new Uint8Array(span.count);
  const usualArrival = 8 * 60 + 20 + 25 * normal(random);
  let today = -1;
  let shift = { comes: false, from: 0, to: 0, awayAtLunch: false };
  for (let i = 0; i < span.count; i++) {
    if (day[i] !== today) {
      today = day[i] as number;
      const from = usualArrival + 20 * normal(random);
      shift = {
        comes: random() < (ATTENDANCE[weekday[i] as number] ?? 0),
        from,
        to: from + 8.6 * 60 + 30 * normal(random),
        awayAtLunch: random() < LUNCH.awayShare,
      };
    }
    const minute = minuteOfDay[i] as number;
    const atLunch = shift.awayAtLunch && minute >= LUNCH.fromMinute && minute < LUNCH.toMinute;
    if (occupied[i] === 1 && shift.comes && minute >= shift.from && minute < shift.to && !atLunch) present[i] = 1;
  }
  return present;
}
