import { type PointSeries, usualStepSeconds } from "../samples";
import type { OffsetChange } from "./clock-changes";

/** What is odd about the hours at a clock change: `missing` samples, or `doubled` ones. */
export type OddHour = OffsetChange & { fault: "missing" | "doubled"; pass: "first" | "second" | "after" };

/**
 * Clock changes at which an interval point lacks an hour, or holds one twice, while it is complete beside. When the clocks
 * go back the hour is passed twice, and an export without offsets often keeps one pass or puts both into one; when they go
 * forward the hour after them is looked at. Change-of-value points cannot tell.
 */
export function oddHours({ samples: { ts }, sampling }: PointSeries, changes: readonly OffsetChange[]): OddHour[] {
  const usual = usualStepSeconds(ts);
  if (sampling !== "interval" || usual === null) return [];
  const found: OddHour[] = [];
  for (const change of changes) {
    const { atUtcSeconds: at, bySeconds } = change;
    const length = Math.abs(bySeconds);
    const expected = length / usual;
    const share = (from: number): number => (firstAt(ts, from + length) - firstAt(ts, from)) / expected;
    const passes = bySeconds < 0 ? (["first", "second"] as const) : (["after"] as const);
    const from = (pass: OddHour["pass"]): number => (pass === "first" ? at - length : at);
    const outer = [bySeconds < 0 ? at - 2 * length : at - length, at + length];
    if (expected < 1 || outer.some((start) => share(start) < 0.75)) continue;
    for (const pass of passes) {
      const there = share(from(pass));
      if (there < 0.5) found.push({ ...change, fault: "missing", pass });
      else if (there > 1.5) found.push({ ...change, fault: "doubled", pass });
    }
  }
  return found;
}

function firstAt(ts: Float64Array, at: number): number {
  let low = 0;
  let high = ts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ts[middle] as number) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
