import { dayNumberFromLocalDate, type LocalDate } from "./civil-date";

/** `date-time-zone` also tells the two readings of a repeated hour apart. */
export type LocalStyle = "date" | "time" | "date-time" | "date-time-zone";

const formats = new Map<string, Intl.DateTimeFormat>();

/** An instant (epoch milliseconds) on a zone's wall clock: `4 Jul 2026, 14:30`. Throws for a name that is no zone. */
export function formatLocal(msEpoch: number, timeZone: string, style: LocalStyle): string {
  const part: Partial<Record<Intl.DateTimeFormatPartTypes, string>> = {};
  for (const { type, value } of formatOf(timeZone).formatToParts(msEpoch)) part[type] = value;
  const date = `${part.day} ${part.month} ${part.year}`;
  const time = `${part.hour}:${part.minute}`;
  switch (style) {
    case "date":
      return date;
    case "time":
      return time;
    case "date-time":
      return `${date}, ${time}`;
    case "date-time-zone":
      return `${date}, ${time} ${part.timeZoneName}`;
  }
}

/** A calendar date as printed, `4 Jul 2026`; what is not a date of the calendar stays as it is. */
export function formatLocalDate(date: LocalDate): string {
  const days = dayNumberFromLocalDate(date);
  return days === null ? date : formatLocal(days * 86_400_000, "UTC", "date");
}

function formatOf(timeZone: string): Intl.DateTimeFormat {
  const known = formats.get(timeZone);
  if (known) return known;
  const made = new Intl.DateTimeFormat("en", {
    timeZone,
    hourCycle: "h23",
    year: "numeric",
    month: "short",
    day: "numeric",
    hour: "2-digit",
    minute: "2-digit",
    timeZoneName: "short",
  });
  formats.set(timeZone, made);
  return made;
}
