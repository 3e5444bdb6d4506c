const KEY = Symbol.for("setpoint-ledger.report-senders");
const shared = globalThis as typeof globalThis & { [KEY]?: Map<string, number[]> };

const HOUR_MS = 3_600_000;
/** No limit looks further than this many reports, so no more of them are remembered. */
const MOST_REMEMBERED = 1000;

/**
 * Remembers that a report came from a network address, and says how many came from it within the hour before. Kept in memory
 * and never written: an address says who was where. Starting the server anew forgets it.
 */
export function noteReportFrom(address: string, nowMs: number): number {
  shared[KEY] ??= new Map();
  const senders = shared[KEY];
  for (const [each, times] of senders) if ((times.at(-1) ?? 0) <= nowMs - HOUR_MS) senders.delete(each);
  const recent = (senders.get(address) ?? []).filter((atMs) => atMs > nowMs - HOUR_MS);
  senders.set(address, [...recent, nowMs].slice(-MOST_REMEMBERED));
  return recent.length;
}
