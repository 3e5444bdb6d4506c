import { formatNumber } from "@/lib/units/format";

/** Bytes in MB, as files are listed: 1 MB = 1,000,000 bytes. */
export function megabytesText(bytes: number): string {
  const megabytes = bytes / 1e6;
  return `${formatNumber(megabytes, { decimals: megabytes >= 99.95 ? 0 : 1 })}\u00a0MB`;
}

/** How long is left at a rate, to be read aloud; nothing when it cannot be told. */
export function timeLeftText(bytesLeft: number, bytesPerSecond: number | null): string {
  if (!bytesPerSecond || bytesLeft <= 0) return "";
  const seconds = bytesLeft / bytesPerSecond;
  if (seconds < 10) return "a few seconds left";
  if (seconds < 90) return `${Math.ceil(seconds / 10) * 10}\u00a0s left`;
  const minutes = Math.ceil(seconds / 60);
  if (minutes < 90) return `${minutes}\u00a0min left`;
  return `${formatNumber(seconds / 3600, { decimals: 1 })}\u00a0h left`;
}

/** Bytes that had gone at a time [ms]. */
export type Mark = { atMs: number; bytes: number };
const RATE_OVER_MS = 10_000;

/** Marks of the last ten seconds with a new one; a step back (a part that has to go again) begins anew. */
export function withMark(marks: readonly Mark[], mark: Mark): Mark[] {
  const last = marks.at(-1);
  if (last && mark.bytes < last.bytes) return [mark];
  return [...marks.filter(({ atMs }) => mark.atMs - atMs <= RATE_OVER_MS), mark];
}

/** Bytes a second over the marks; null before a second has passed. */
export function rateOf(marks: readonly Mark[]): number | null {
  const [first, last] = [marks[0], marks.at(-1)];
  if (!first || !last || last.atMs - first.atMs < 1000) return null;
  return ((last.bytes - first.bytes) / (last.atMs - first.atMs)) * 1000;
}
