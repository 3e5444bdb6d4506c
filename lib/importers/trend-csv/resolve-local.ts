import type { ZoneTable } from "@/lib/time/zone-table";
import type { ClockRule } from "./trend-file";

export const RESOLVED = 0;
/** In the hour that clocks repeat, told apart by order in the file. */
export const REPEATED = 1;
/** In the hour that clocks repeat, there once only. */
export const AMBIGUOUS = 2;
/** In the hour that clocks skip. */
export const NONEXISTENT = 3;
export const NO_STAMP = 4;

export type LocalStamps = {
  /** Local seconds (the wall clock as if it were UTC), NaN where there is no stamp. */
  local: Float64Array;
  /** Offset in seconds that goes with the stamp itself, or NaN: then the building's zone decides. */
  offset: Float64Array;
};

/**
 * UTC seconds of one point's stamps, in file order. A stamp that occurs twice in the hour that clocks repeat is
 * daylight time first and standard time second (the other way about in a file that runs newest first); once only it
 * stays open. A stamp that does not exist stays open unless the clock keeps standard time all year.
 */
export function resolveLocal(
  stamps: LocalStamps,
  zone: ZoneTable,
  clock: ClockRule | undefined,
  newestFirst: boolean,
): { utc: Float64Array; state: Uint8Array } {
  const n = stamps.local.length;
  const utc = new Float64Array(n).fill(Number.NaN);
  const state = new Uint8Array(n);
  const repeated = new Map<number, number[]>();
  for (let i = 0; i < n; i++) {
    const local = stamps.local[i] as number;
    const offset = stamps.offset[i] as number;
    if (Number.isNaN(local)) {
      state[i] = NO_STAMP;
    } else if (!Number.isNaN(offset)) {
      utc[i] = local - offset;
    } else if (clock === "standard-time-all-year") {
      utc[i] = local - standardOffset(zone, local);
    } else {
      const instant = zone.utcFromLocal(local);
      if (instant.status === "unique") utc[i] = instant.utcSeconds;
      else if (instant.status === "missing") state[i] = NONEXISTENT;
      else {
        state[i] = AMBIGUOUS;
        const rows = repeated.get(local);
        if (rows) rows.push(i);
        else repeated.set(local, [i]);
      }
    }
  }
  for (const [local, rows] of repeated) {
    if (rows.length < 2) continue;
    const instant = zone.utcFromLocal(local);
    if (instant.status !== "repeated") continue;
    rows.forEach((row, pass) => {
      const first = newestFirst ? pass === rows.length - 1 : pass === 0;
      utc[row] = first ? instant.firstUtcSeconds : instant.secondUtcSeconds;
      state[row] = REPEATED;
    });
  }
  return { utc, state };
}

/** The zone's standard offset about a local time: the smaller of those half a year to each side. */
export function standardOffset(zone: ZoneTable, local: number): number {
  const halfYear = 182 * 86400;
  const here = zone.offsetAt(local);
  return Math.min(here, zone.offsetAt(local - halfYear), zone.offsetAt(local + halfYear));
}
