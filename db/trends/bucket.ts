/** Length of the period that one chunk covers. */
export const BUCKET_SECONDS = 28 * 86_400;

/** Bucket of 2000-01-01T00:00:00Z: the first one that a chunk id can name. Buckets count from 1970. */
const FIRST_BUCKET = Math.floor(946_684_800 / BUCKET_SECONDS);
const BUCKETS_PER_SERIES = 4096;

/** First and last second that the store can hold: December 1999 to the year 2313. */
export const FIRST_SECOND = FIRST_BUCKET * BUCKET_SECONDS;
export const LAST_SECOND = (FIRST_BUCKET + BUCKETS_PER_SERIES) * BUCKET_SECONDS - 1;

const LARGEST_SERIES = Math.floor(Number.MAX_SAFE_INTEGER / BUCKETS_PER_SERIES) - 1;

/** Id of the chunk that holds a series at a second. Ids of a series ascend with time, so its chunks lie together. */
export function chunkIdAt(series: number, ts: number): number {
  return series * BUCKETS_PER_SERIES + Math.floor(ts / BUCKET_SECONDS) - FIRST_BUCKET;
}

/** The ids that a series can have, both ends included. */
export function chunkIdRange(series: number): { first: number; last: number } {
  return { first: series * BUCKETS_PER_SERIES, last: series * BUCKETS_PER_SERIES + BUCKETS_PER_SERIES - 1 };
}

/** What a chunk id stands for: its series and its period, `from <= ts < to`. */
export function chunkPeriod(id: number): { series: number; from: number; to: number } {
  const series = Math.floor(id / BUCKETS_PER_SERIES);
  const from = (id - series * BUCKETS_PER_SERIES + FIRST_BUCKET) * BUCKET_SECONDS;
  return { series, from, to: from + BUCKET_SECONDS };
}

/** A time brought into what the store can hold; for the open ends of a period that was asked for. */
export function clampToStore(ts: number): number {
  return Math.min(Math.max(ts, FIRST_SECOND), LAST_SECOND + 1);
}

export function assertSeriesId(series: number): void {
  if (Number.isInteger(series) && series >= 1 && series <= LARGEST_SERIES) return;
  throw new RangeError(`${series} is not a series id: it must be a whole number from 1 to ${LARGEST_SERIES}`);
}
