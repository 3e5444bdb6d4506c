import type { ByteSource } from "./byte-source";
import { inspectionOf } from "./inspect-trend-file";
import { readTrendFile } from "./read-trend-file";
import type { RowAccounting, RowNote, TrendFileInput, TrendFinding, TrendInspection, TrendPoint } from "./trend-file";

export type TrendSourceInput = Omit<TrendFileInput, "bytes"> & { source: ByteSource };

/** How far the reading is. */
export type ReadProgress = {
  bytesRead: number;
  bytesInFile: number;
  rows: number;
  readings: number;
  findings: readonly TrendFinding[];
};

/** Points with the readings of one stretch of the file. A point may come again in the next part. */
export type TrendPart = { points: TrendPoint[]; progress: ReadProgress };

/** What the whole file held, without its readings: the inspection and the fate of its rows. */
export type TrendFileResult = TrendInspection & { rows: RowAccounting; rowNotes: RowNote[] };

/**
 * Reads a trend export of any size part by part, in bounded memory. The parts stand for nothing when the result, which
 * is returned at the end, asks or refuses. Throws a RangeError for a time zone that is none.
 */
export async function* readTrendParts(input: TrendSourceInput): AsyncGenerator<TrendPart, TrendFileResult> {
  const { source, ...rest } = input;
  const reading = await readTrendFile({ ...rest, bytes: source.read(0, source.size) });
  const readings = reading.points.reduce((sum, point) => sum + point.tsUtcSeconds.length, 0);
  yield {
    points: reading.points,
    progress: {
      bytesRead: source.size,
      bytesInFile: source.size,
      rows: reading.rows.rowsInFile,
      readings,
      findings: reading.findings,
    },
  };
  return { ...inspectionOf(reading), rows: reading.rows, rowNotes: reading.rowNotes };
}

/** Reads a file to its end for what it holds; tells each part's progress. Throw from `onProgress` to stop. */
export async function inspectTrendSource(
  input: TrendSourceInput,
  onProgress?: (progress: ReadProgress) => void | Promise<void>,
): Promise<TrendFileResult> {
  const parts = readTrendParts(input);
  for (;;) {
    const next = await parts.next();
    if (next.done) return next.value;
    await onProgress?.(next.value.progress);
  }
}
