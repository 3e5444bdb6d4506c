/**
 * Readings of energy against temperature, sorted by temperature with equal temperatures taken together, and running
 * sums over them. A straight line or a mean through any run of temperatures, with its sum of squared errors, then
 * takes the time of a few additions. Both coordinates are kept relative to their means, so that sums of squares do
 * not cancel.
 */
export class SortedSums {
  /** Distinct temperatures, ascending [K above `meanC`]. */
  readonly x: Float64Array;
  readonly count: number;
  readonly meanC: number;
  readonly meanKwh: number;
  /** Running sums with a leading 0: entry k sums the distinct temperatures before k. */
  private readonly n: Float64Array;
  private readonly sx: Float64Array;
  private readonly sxx: Float64Array;
  private readonly sy: Float64Array;
  private readonly sxy: Float64Array;
  private readonly syy: Float64Array;

  /** Throws when the lists differ in length or are empty. */
  constructor(tempC: ArrayLike<number>, energyKwh: ArrayLike<number>) {
    const length = tempC.length;
    if (length !== energyKwh.length || length === 0) throw new RangeError("each energy needs its temperature");
    this.meanC = meanOf(tempC);
    this.meanKwh = meanOf(energyKwh);
    const order = new Uint32Array(length).map((_, i) => i);
    order.sort((a, b) => (tempC[a] as number) - (tempC[b] as number));
    const x = new Float64Array(length);
    const sums = Array.from({ length: 6 }, () => new Float64Array(length + 1)) as Six;
    const [n, sx, sxx, sy, sxy, syy] = sums;
    let at = -1;
    let previous = Number.NaN;
    for (let i = 0; i < length; i++) {
      const each = order[i] as number;
      const temp = tempC[each] as number;
      if (temp !== previous) {
        at++;
        x[at] = temp - this.meanC;
        for (const sum of sums) sum[at + 1] = sum[at] as number;
        previous = temp;
      }
      const dx = x[at] as number;
      const dy = (energyKwh[each] as number) - this.meanKwh;
      const k = at + 1;
      n[k] = (n[k] as number) + 1;
      sx[k] = (sx[k] as number) + dx;
      sxx[k] = (sxx[k] as number) + dx * dx;
      sy[k] = (sy[k] as number) + dy;
      sxy[k] = (sxy[k] as number) + dx * dy;
      syy[k] = (syy[k] as number) + dy * dy;
    }
    this.count = at + 1;
    this.x = x.subarray(0, this.count);
    [this.n, this.sx, this.sxx, this.sy, this.sxy, this.syy] = sums;
  }

  /** Sum of squared errors about the mean of temperatures `from` to `to`, both included; 0 of an empty run. */
  flatSse(from: number, to: number): number {
    if (to < from) return 0;
    const n = (this.n[to + 1] as number) - (this.n[from] as number);
    const sy = (this.sy[to + 1] as number) - (this.sy[from] as number);
    return Math.max(0, (this.syy[to + 1] as number) - (this.syy[from] as number) - (sy * sy) / n);
  }

  /** Mean energy of temperatures `from` to `to`, relative to the mean of all. */
  flatLevel(from: number, to: number): number {
    const n = (this.n[to + 1] as number) - (this.n[from] as number);
    return ((this.sy[to + 1] as number) - (this.sy[from] as number)) / n;
  }

  /** Least-squares line through temperatures `from` to `to`: level at the mean temperature, slope and errors. */
  line(from: number, to: number): { level: number; slope: number; sse: number } {
    const n = (this.n[to + 1] as number) - (this.n[from] as number);
    const sx = (this.sx[to + 1] as number) - (this.sx[from] as number);
    const sy = (this.sy[to + 1] as number) - (this.sy[from] as number);
    const xx = (this.sxx[to + 1] as number) - (this.sxx[from] as number) - (sx * sx) / n;
    const xy = (this.sxy[to + 1] as number) - (this.sxy[from] as number) - (sx * sy) / n;
    const yy = (this.syy[to + 1] as number) - (this.syy[from] as number) - (sy * sy) / n;
    const slope = to > from ? xy / xx : 0;
    return { level: (sy - slope * sx) / n, slope, sse: Math.max(0, yy - slope * xy) };
  }

  /**
   * Least squares of level + left · max(0, a - x) + right · max(0, x - b) over temperatures `from` to `to`. The wings
   * never overlap, so the normal equations of each are solved on their own and the level closes the system.
   * `leftTo` is the last temperature below a and `rightFrom` the first above b; a wing that holds none is left out.
   */
  winged(run: { from: number; to: number; a: number; leftTo: number; b: number; rightFrom: number }): WingedFit {
    const { from, to, a, leftTo, b, rightFrom } = run;
    let n = (this.n[to + 1] as number) - (this.n[from] as number);
    let y = (this.sy[to + 1] as number) - (this.sy[from] as number);
    const yy = (this.syy[to + 1] as number) - (this.syy[from] as number);
    const left = leftTo >= from ? this.wing(from, leftTo, a, -1) : null;
    const right = rightFrom <= to ? this.wing(rightFrom, to, b, 1) : null;
    const sumY = y;
    for (const wing of [left, right]) {
      if (!wing) continue;
      n -= (wing.h * wing.h) / wing.hh;
      y -= (wing.h * wing.hy) / wing.hh;
    }
    const level = y / n;
    const leftSlope = left ? (left.hy - level * left.h) / left.hh : 0;
    const rightSlope = right ? (right.hy - level * right.h) / right.hh : 0;
    const sse = yy - level * sumY - leftSlope * (left?.hy ?? 0) - rightSlope * (right?.hy ?? 0);
    return { level, left: leftSlope, right: rightSlope, a, b, sse: Math.max(0, sse) };
  }

  /** The same over all temperatures with the change points at temperatures p and q, p <= q. */
  wingedAt(p: number, q: number): WingedFit {
    const [a, b] = [this.x[p] as number, this.x[q] as number];
    return this.winged({ from: 0, to: this.count - 1, a, leftTo: p - 1, b, rightFrom: q + 1 });
  }

  /**
   * Error of `winged` over all temperatures with the change points at temperatures p and q, p <= q, both inside the
   * ends. The same sums without an object: it is asked hundreds of thousands of times.
   */
  cornerSse(p: number, q: number): number {
    const { n, sx, sxx, sy, sxy, syy, x, count } = this;
    const [a, b] = [x[p] as number, x[q] as number];
    const leftN = n[p] as number;
    const leftX = sx[p] as number;
    const leftY = sy[p] as number;
    const h = a * leftN - leftX;
    const hh = (sxx[p] as number) - 2 * a * leftX + a * a * leftN;
    const hy = a * leftY - (sxy[p] as number);
    const rightN = (n[count] as number) - (n[q + 1] as number);
    const rightX = (sx[count] as number) - (sx[q + 1] as number);
    const rightY = (sy[count] as number) - (sy[q + 1] as number);
    const k = rightX - b * rightN;
    const kk = (sxx[count] as number) - (sxx[q + 1] as number) - 2 * b * rightX + b * b * rightN;
    const ky = (sxy[count] as number) - (sxy[q + 1] as number) - b * rightY;
    const y = sy[count] as number;
    const level = (y - (h * hy) / hh - (k * ky) / kk) / ((n[count] as number) - (h * h) / hh - (k * k) / kk);
    const left = (hy - level * h) / hh;
    const right = (ky - level * k) / kk;
    return (syy[count] as number) - level * y - left * hy - right * ky;
  }

  /** Sums of a wing's distance h from its change point over temperatures `from` to `to`. */
  private wing(from: number, to: number, at: number, sign: 1 | -1): { h: number; hh: number; hy: number } {
    const n = (this.n[to + 1] as number) - (this.n[from] as number);
    const sx = (this.sx[to + 1] as number) - (this.sx[from] as number);
    const sxx = (this.sxx[to + 1] as number) - (this.sxx[from] as number);
    const sy = (this.sy[to + 1] as number) - (this.sy[from] as number);
    const sxy = (this.sxy[to + 1] as number) - (this.sxy[from] as number);
    return { h: sign * (sx - at * n), hh: sxx - 2 * at * sx + at * at * n, hy: sign * (sxy - at * sy) };
  }
}

/** Change points `a` and `b` [K above the mean temperature], level [kWh above the mean energy], slopes away from it. */
export type WingedFit = { level: number; left: number; right: number; a: number; b: number; sse: number };

type Six = [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];

function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  return sum / values.length;
}
