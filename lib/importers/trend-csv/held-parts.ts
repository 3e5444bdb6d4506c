import type { TrendFileResult, TrendPart } from "./trend-file";

/** Readings that are held at most [bytes]: a year of some hundred points. */
const MOST_BYTES = 72_000_000;

/**
 * The parts of a file as its inspection read them, so that an import that follows at once needs no second reading. A file
 * with more readings than are held is read again.
 */
export class HeldParts {
  private parts: TrendPart[] = [];
  private bytes = 0;
  private isOverfull = false;
  private readonly buffers = new Set<ArrayBufferLike>();

  add(part: TrendPart): void {
    if (part.isFirst) this.drop();
    if (this.isOverfull) return;
    for (const { tsUtcSeconds, values } of part.points) {
      for (const { buffer } of [tsUtcSeconds, values]) {
        if (this.buffers.has(buffer)) continue;
        this.buffers.add(buffer);
        this.bytes += buffer.byteLength;
      }
    }
    this.parts.push(part);
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
    for (let part = this.parts.shift(); part; part = this.parts.shift()) yield part;
    this.drop();
    return result;
  }

  private drop(): void {
    this.parts = [];
    this.bytes = 0;
    this.isOverfull = false;
    this.buffers.clear();
  }
}
