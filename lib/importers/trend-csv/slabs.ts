const SLAB_BYTES = 2_000_000;

/** Room for many small arrays, taken from a few large blocks: fresh memory and its clearing away cost most of all. */
export class Slabs {
  /** Bytes handed out. */
  bytes = 0;
  private slab = new ArrayBuffer(0);
  private used = 0;

  int16(length: number): Int16Array {
    return new Int16Array(...this.take(2 * length), length);
  }

  int32(length: number): Int32Array {
    return new Int32Array(...this.take(4 * length), length);
  }

  uint32(length: number): Uint32Array {
    return new Uint32Array(...this.take(4 * length), length);
  }

  float64(length: number): Float64Array {
    return new Float64Array(...this.take(8 * length), length);
  }

  private take(length: number): [ArrayBuffer, number] {
    const whole = Math.ceil(length / 8) * 8;
    if (this.used + whole > this.slab.byteLength) {
      this.slab = new ArrayBuffer(Math.max(whole, SLAB_BYTES));
      this.used = 0;
    }
    const at = this.used;
    this.used += whole;
    this.bytes += whole;
    return [this.slab, at];
  }
}
