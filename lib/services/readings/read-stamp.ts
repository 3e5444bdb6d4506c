import { z } from "zod";

const stamp = z.iso.datetime({ offset: true });
const EARLIEST = Date.UTC(2000, 0, 1) / 1000;
const AHEAD_SECONDS = 86_400;

export type Stamp = { status: "ok"; tsUtcSeconds: number; rounded: boolean } | { status: "rejected"; reason: string };

/** A time with its offset as UTC seconds; a fraction of a second is rounded. */
export function readStamp(at: string, nowMs: number): Stamp {
  if (!stamp.safeParse(at).success) {
    const local = z.iso.datetime({ local: true }).safeParse(at).success;
    return {
      status: "rejected",
      reason: local
        ? "the time has no offset: write it as 2026-07-06T08:15:00-05:00, or with Z"
        : "not a time: write it as 2026-07-06T08:15:00-05:00",
    };
  }
  const ms = Date.parse(at);
  const tsUtcSeconds = Math.round(ms / 1000);
  if (tsUtcSeconds < EARLIEST)
    return { status: "rejected", reason: "before the year 2000: check the collector's clock" };
  if (tsUtcSeconds > nowMs / 1000 + AHEAD_SECONDS)
    return { status: "rejected", reason: "more than a day ahead of now: check the collector's clock" };
  return { status: "ok", tsUtcSeconds, rounded: ms !== tsUtcSeconds * 1000 };
}
