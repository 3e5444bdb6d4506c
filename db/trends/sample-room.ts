/**
 * Arrays for the samples of one chunk after another. They are used again: what was taken stands until the next time, and
 * a write of many chunks leaves no garbage of theirs.
 */
export class SampleRoom {
  private ts = new Float64Array(0);
  private v = new Int32Array(0);

  take(count: number): { ts: Float64Array; v: Int32Array } {
    if (this.ts.length < count) {
      this.ts = new Float64Array(this.ts.length === 0 ? count : Math.ceil(count * 1.25));
      this.v = new Int32Array(this.ts.length);
    }
    return { ts: this.ts.subarray(0, count), v: this.v.subarray(0, count) };
  }
}
