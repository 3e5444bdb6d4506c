import type { ZoneTable } from "@/lib/time/zone-table";

/**
 * The next moment [epoch ms] after `nowMs` at which a building's clock shows a full hour (0 to 23). An hour that a day shows
 * twice counts when it comes first; one that it skips is the moment at which the clocks go forward.
 */
export function nextDailyMs(nowMs: number, zone: ZoneTable, hour: number): number {
  const today = Math.floor(zone.localFromUtc(Math.floor(nowMs / 1000)) / 86_400);
  for (let day = today; ; day++) {
    const local = zone.utcFromLocal(day * 86_400 + hour * 3600);
    const at =
      local.status === "unique"
        ? local.utcSeconds
        : local.status === "repeated"
          ? local.firstUtcSeconds
          : local.shiftedUtcSeconds;
    if (at * 1000 > nowMs) return at * 1000;
  }
}
