import type { LocalDate } from "@/lib/time/civil-date";
import { localDateAt } from "@/lib/time/local-date";

/** The one reading of the clock on the server: epoch milliseconds for a use-case's context. */
export const now = (): number => Date.now();

/** Today by a zone's calendar, as `YYYY-MM-DD`. */
export const today = (timeZone: string): LocalDate => localDateAt(now(), timeZone);
