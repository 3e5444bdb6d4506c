import type { TrendSlice } from "@/lib/trends/trend-store";
import { assertSeriesId, FIRST_SECOND, LAST_SECOND } from "./bucket";
import type { Samples } from "./chunk-format";
import { rescale } from "./rescale";

const MOST_DECIMALS = 9;

/** Collects checked slices by series until they are worth a flush. Copies them: a caller may use its arrays again. */
export class SliceBuffer {
  sampleCount = 0;
  private readonly bySeries = new Map<number, Samples[]>();

  add(slice: TrendSlice): void {
    assertSlice(slice);
    const { series, ts, v, decimals } = slice;
    if (ts.length === 0) return;
    const kept = this.bySeries.get(series) ?? [];
    kept.push({ ts: ts.slice(), v: v.slice(), decimals });
    this.bySeries.set(series, kept);
    this.sampleCount += ts.length;
  }

  /** Hands out what was collected, series ascending, and is empty afterwards. */
  take(): { series: number; rows: Samples }[] {
    const series = [...this.bySeries.keys()].sort((a, b) => a - b);
    const taken = series.map((id) => ({ series: id, rows: join(id, this.bySeries.get(id) ?? []) }));
    this.bySeries.clear();
    this.sampleCount = 0;
    return taken;
  }
}

function join(series: number, parts: Samples[]): Samples {
  const only = parts[0];
  if (only !== undefined && parts.length === 1) return only;
  const decimals = Math.max(...parts.map((part) => part.decimals));
  const count = parts.reduce((sum, part) => sum + part.ts.length, 0);
  const joined: Samples = { ts: new Float64Array(count), v: new Int32Array(count), decimals };
  let at = 0;
  for (const part of parts) {
    joined.ts.set(part.ts, at);
    joined.v.set(rescaleNamed(series, part, decimals).v, at);
    at += part.ts.length;
  }
  return joined;
}

/** `rescale`, with the series in what it says of a value that does not fit. */
export function rescaleNamed(series: number, samples: Samples, decimals: number): Samples {
  try {
    return rescale(samples, decimals);
  } catch (error) {
    throw error instanceof RangeError ? new RangeError(`series ${series}: ${error.message}`) : error;
  }
}

function assertSlice({ series, ts, v, decimals }: TrendSlice): void {
  assertSeriesId(series);
  if (ts.length !== v.length) {
    throw new RangeError(`series ${series}: ${ts.length} times, but ${v.length} values`);
  }
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > MOST_DECIMALS) {
    throw new RangeError(
      `series ${series}: ${decimals} decimals; it must be a whole number from 0 to ${MOST_DECIMALS}`,
    );
  }
  for (const time of ts) {
    if (Number.isInteger(time) && time >= FIRST_SECOND && time <= LAST_SECOND) continue;
    throw new RangeError(
      `series ${series}: ${time} is not a time that can be kept; it must be a whole UTC second from ${FIRST_SECOND} (1999) to ${LAST_SECOND} (2313)`,
    );
  }
}
