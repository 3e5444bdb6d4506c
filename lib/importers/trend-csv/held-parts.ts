import { Scratch } from "./scratch";
import type { PartPoint, ReadProgress, TrendFileResult, TrendPart } from "./trend-file";

/** Readings that are held at most [bytes]: a year of some hundred points. */
const MOST_BYTES = 64_000_000;
const POWERS = [1, 10, 100, 1000] as const;

/** Values as whole numbers times 10^-decimals, where that gives each back exactly, else as they were. */
type HeldValues = { scaled: Int32Array; decimals: number } | { plain: Float64Array };
type HeldPoint = { point: PartPoint; times: Uint32Array | Float64Array; values: HeldValues };
type HeldPart = { points: HeldPoint[]; progress: ReadProgress };

/**
 * The parts of a file as its inspection read them, packed, so that an import that follows at once needs no second
 * reading. A file with more readings than are held is read again.
 */
export class HeldParts {
  private parts: HeldPart[] = [];
  private bytes = 0;
  private isOverfull = false;

  add({ points, progress, isFirst }: TrendPart): void {
    if (isFirst) this.drop();
    if (this.isOverfull) return;
    const times = new Map<Float64Array, HeldPoint["times"]>();
    this.parts.push({ points: points.map((point) => this.pack(point, times)), progress });
    if (this.bytes > MOST_BYTES) {
      this.drop();
      this.isOverfull = true;
    }
  }

  get isWhole(): boolean {
    return !this.isOverfull && this.parts.length > 0;
  }

  /** Hands the parts out once, as `readTrendParts` would, and forgets each. */
  async *replay(result: TrendFileResult): AsyncGenerator<TrendPart, TrendFileResult> {
    const scratch = new Scratch();
    let isFirst = true;
    for (let part = this.parts.shift(); part; part = this.parts.shift()) {
      yield { points: unpack(part.points, scratch), progress: part.progress, isFirst };
      isFirst = false;
    }
    this.drop();
    return result;
  }

  private pack(point: PartPoint, known: Map<Float64Array, HeldPoint["times"]>): HeldPoint {
    const { tsUtcSeconds, values: own, ...about } = point;
    let times = known.get(tsUtcSeconds);
    if (!times) {
      times = packTimes(tsUtcSeconds);
      known.set(tsUtcSeconds, times);
      this.bytes += times.byteLength;
    }
    const values = packValues(own);
    this.bytes += "plain" in values ? values.plain.byteLength : values.scaled.byteLength;
    const none = new Float64Array(0);
    return { point: { ...about, tsUtcSeconds: none, values: none }, times, values };
  }

  private drop(): void {
    this.parts = [];
    this.bytes = 0;
    this.isOverfull = false;
  }
}

function packTimes(instants: Float64Array): Uint32Array | Float64Array {
  const packed = new Uint32Array(instants.length);
  packed.set(instants);
  for (let i = 0; i < packed.length; i++) if (packed[i] !== instants[i]) return instants.slice();
  return packed;
}

function packValues(values: Float64Array): HeldValues {
  for (let decimals = 0; decimals < POWERS.length; decimals++) {
    const scaled = scaledBy(values, POWERS[decimals] as number);
    if (scaled) return { scaled, decimals };
  }
  return { plain: values.slice() };
}

/** Null as soon as a value is not exactly a whole number of that power. */
function scaledBy(values: Float64Array, power: number): Int32Array | null {
  // Most points show at their first values that they have decimals.
  for (let i = 0; i < Math.min(8, values.length); i++)
    if (Math.round((values[i] as number) * power) / power !== values[i]) return null;
  const scaled = new Int32Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const whole = Math.round((values[i] as number) * power);
    scaled[i] = whole;
    if (scaled[i] !== whole || whole / power !== values[i]) return null;
  }
  return scaled;
}

/** Points with their readings, in arrays that are used again for the next part. */
function unpack(points: readonly HeldPoint[], scratch: Scratch): PartPoint[] {
  const count = points.reduce((sum, { times }) => sum + times.length, 0);
  const room = { times: scratch.float64("times", count), values: scratch.float64("values", count) };
  const known = new Map<HeldPoint["times"], Float64Array>();
  let [timesAt, at] = [0, 0];
  return points.map(({ point, times, values }): PartPoint => {
    let instants = known.get(times);
    if (!instants) {
      instants = room.times.subarray(timesAt, timesAt + times.length);
      instants.set(times);
      timesAt += times.length;
      known.set(times, instants);
    }
    const own = room.values.subarray(at, at + times.length);
    at += times.length;
    if ("plain" in values) own.set(values.plain);
    else unscale(values.scaled, POWERS[values.decimals] as number, own);
    return { ...point, tsUtcSeconds: instants, values: own };
  });
}

function unscale(scaled: Int32Array, power: number, out: Float64Array): void {
  for (let i = 0; i < scaled.length; i++) out[i] = (scaled[i] as number) / power;
}
