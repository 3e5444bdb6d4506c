import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import type { ZoneTable } from "@/lib/time/zone-table";
import { plainHeading } from "./heading-words";

/** No clock of seconds that have run since a start is thought to run longer [s]: three years. */
const LONGEST = 1e8;
const OTHER_UNIT = /\b(?:ms|min|mins|minutes?|h|hrs?|hours?|d|days?)\b/;

/** Whether the numbers under a heading of time are seconds since a start that the file does not say: small, and running on. */
export function areElapsedSeconds(heading: string, values: readonly string[]): boolean {
  if (values.length < 2 || OTHER_UNIT.test(plainHeading(heading))) return false;
  const seconds = values.map((text) => (/^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN));
  const isRunning = seconds.every((second, i) => i === 0 || second >= (seconds[i - 1] as number));
  return isRunning && (seconds.at(-1) as number) > (seconds[0] as number) && (seconds.at(-1) as number) < LONGEST;
}

/** Whether a text is a start as it is answered: `2026-01-01T00:00`, with seconds if need be. */
export const isTimeStart = (text: string): boolean => localStart(text) !== null;

/**
 * UTC seconds of a start as answered, on the clock of the zone; null when it is no such time, or none that the clock
 * shows. Of an hour that is there twice it is the first.
 */
export function readTimeStart(text: string, zone: ZoneTable): number | null {
  const local = localStart(text);
  if (local === null) return null;
  const instant = zone.utcFromLocal(local);
  if (instant.status === "missing") return null;
  return instant.status === "unique" ? instant.utcSeconds : instant.firstUtcSeconds;
}

/** The wall clock of a start, in seconds as if it were UTC. */
function localStart(text: string): number | null {
  const match = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})(?::(\d{2}))?$/.exec(text.trim());
  const days = match && dayNumberFromLocalDate(match[1] as string);
  if (!match || days === null) return null;
  const [hour, minute, second] = [match[2], match[3], match[4] ?? 0].map(Number) as [number, number, number];
  if (hour > 23 || minute > 59 || second > 59) return null;
  return days * 86400 + hour * 3600 + minute * 60 + second;
}
