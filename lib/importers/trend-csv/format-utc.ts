import { localDateFromDayNumber } from "@/lib/time/civil-date";

/** `2026-07-06T12:00:00Z` of UTC seconds; milliseconds only where there are any. */
export function formatUtc(utcSeconds: number): string {
  const millis = Math.round(utcSeconds * 1000);
  const days = Math.floor(millis / 86_400_000);
  const rest = millis - days * 86_400_000;
  const two = (value: number): string => String(value).padStart(2, "0");
  const clock = `${two(Math.floor(rest / 3_600_000))}:${two(Math.floor(rest / 60_000) % 60)}:${two(Math.floor(rest / 1000) % 60)}`;
  const fraction = rest % 1000 === 0 ? "" : `.${String(rest % 1000).padStart(3, "0")}`;
  return `${localDateFromDayNumber(days)}T${clock}${fraction}Z`;
}
