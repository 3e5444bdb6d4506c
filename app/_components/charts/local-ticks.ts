import { civilFromDayNumber, dayNumber, isoWeekday } from "@/lib/time/civil-date";

/** A tick of a time axis: UTC seconds and its text in the building's zone. */
export type LocalTick = { t: number; label: string };

const HOUR = 3600;
const DAY = 86400;
const HOUR_STEPS = [1, 2, 3, 6, 12] as const;
const DAY_STEPS = [1, 2, 7, 14, 28, 91] as const;
const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;
const readers = new Map<string, Intl.DateTimeFormat>();

/**
 * Ticks at wall-clock hours or midnights of `timeZone` within `from <= t <= to` (UTC seconds), no denser than
 * `maxTicks` over the whole of it.
 * A wall-clock hour that clocks skip has no tick, one that they repeat has its first.
 */
export function localTicks({
  from,
  to,
  timeZone,
  maxTicks,
}: {
  from: number;
  to: number;
  timeZone: string;
  maxTicks: number;
}): LocalTick[] {
  const span = Math.max(1, to - from);
  const room = Math.max(1, maxTicks);
  const hours = HOUR_STEPS.find((step) => span / (step * HOUR) <= room);
  const days = hours ? 1 : (DAY_STEPS.find((step) => span / (step * DAY) <= room) ?? 91);
  // A weekday makes a label half as long again.
  const withWeekday = days === 1 && (hours !== undefined || span / DAY <= 0.7 * room);
  const firstDay = Math.floor(localSeconds(from, timeZone) / DAY);
  const lastDay = Math.floor(localSeconds(to, timeZone) / DAY);
  const ticks: LocalTick[] = [];
  for (let day = firstDay; day <= lastDay; day++) {
    // Weeks start on Monday; day 4 of the count is Monday, 5 January 1970.
    if ((((day - 4) % days) + days) % days !== 0) continue;
    for (let hour = 0; hour < 24; hour += hours ?? 24) {
      const t = utcOfWallClock(day * DAY + hour * HOUR, timeZone);
      if (t === null || t < from || t > to) continue;
      ticks.push({
        t,
        label: hour === 0 ? dayLabel(day, withWeekday) : `${String(hour).padStart(2, "0")}:00`,
      });
    }
  }
  return ticks;
}

function dayLabel(day: number, withWeekday: boolean): string {
  const { month, day: date } = civilFromDayNumber(day);
  const name = `${date} ${MONTHS[month - 1]}`;
  return withWeekday ? `${WEEKDAYS[isoWeekday(day) - 1]} ${name}` : name;
}

/** First instant that shows a wall-clock reading, or null when clocks skip it. */
function utcOfWallClock(local: number, timeZone: string): number | null {
  const candidates = [local - offsetAt(local - DAY, timeZone), local - offsetAt(local + DAY, timeZone)].sort(
    (a, b) => a - b,
  );
  return candidates.find((t) => localSeconds(t, timeZone) === local) ?? null;
}

const offsetAt = (t: number, timeZone: string): number => localSeconds(t, timeZone) - t;

function localSeconds(t: number, timeZone: string): number {
  let reader = readers.get(timeZone);
  if (!reader) {
    reader = new Intl.DateTimeFormat("en-US", {
      timeZone,
      hourCycle: "h23",
      year: "numeric",
      month: "numeric",
      day: "numeric",
      hour: "numeric",
      minute: "numeric",
      second: "numeric",
    });
    readers.set(timeZone, reader);
  }
  const part: Record<string, number> = {};
  for (const { type, value } of reader.formatToParts(t * 1000)) part[type] = Number(value);
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = part;
  return dayNumber(year, month, day) * DAY + hour * HOUR + minute * 60 + second;
}
