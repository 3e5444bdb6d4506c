/** Arrays that are used again for every part of a file, so that reading a long one makes no garbage. */
export class Scratch {
  private readonly floats = new Map<string, Float64Array>();
  private readonly ints = new Map<string, Int32Array>();

  /** Room for `length` numbers, with whatever stood there before. */
  float64(name: string, length: number): Float64Array {
    let array = this.floats.get(name);
    if (!array || array.length < length) {
      array = new Float64Array(Math.ceil(length * 1.25));
      this.floats.set(name, array);
    }
    return array.subarray(0, length);
  }

  int32(name: string, length: number): Int32Array {
    let array = this.ints.get(name);
    if (!array || array.length < length) {
      array = new Int32Array(Math.ceil(length * 1.25));
      this.ints.set(name, array);
    }
    return array.subarray(0, length);
  }
}
