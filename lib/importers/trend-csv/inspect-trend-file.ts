import { bytesInMemory } from "./byte-source";
import { inspectTrendSource } from "./read-trend-parts";
import type { TrendFileInput, TrendFileResult, TrendInspection } from "./trend-file";

/** Reads a trend export and says what is in it, what was noticed and what has to be asked; stores nothing. */
export async function inspectTrendFile({ bytes, ...input }: TrendFileInput): Promise<TrendInspection> {
  return inspectionOf(await inspectTrendSource({ ...input, source: bytesInMemory(bytes) }));
}

/** The inspection of a file that has been read, in plain values that can be kept as JSON. */
export function inspectionOf(result: TrendFileResult): TrendInspection {
  const { file, outcome, detected, points, ask, findings, refusal, facts } = result;
  return { file, outcome, detected, points, ask, findings, refusal, ...(facts ? { facts } : {}) };
}
