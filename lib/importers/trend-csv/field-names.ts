/** Gives each different text among fields a number, without making a string of a text that was met before. */
export class FieldNames {
  readonly texts: string[] = [];
  /** The texts' bytes, one behind the other, and where each begins; one more for the end of the last. */
  private pool = new Uint8Array(4096);
  private starts = new Int32Array(64);
  private slots = new Int32Array(256).fill(-1);
  /** The text that followed each one when it was met last: a long table goes through its points again and again. */
  private followers = new Int32Array(64).fill(-1);
  private last = -1;

  /** Where the field that was asked for last ends. */
  end = 0;

  /** Number of the field that begins at `from` and goes on to `mark` or the end of its line, from 0 as the texts came. */
  idAt(bytes: Buffer, from: number, mark: number): number {
    const expected = this.last < 0 ? -1 : (this.followers[this.last] as number);
    if (expected >= 0) {
      const start = this.starts[expected] as number;
      const length = (this.starts[expected + 1] as number) - start;
      if (bytes[from + length] === mark && this.isAt(start, length, bytes, from)) {
        this.end = from + length;
        this.last = expected;
        return expected;
      }
    }
    let to = from;
    while (to < bytes.length && bytes[to] !== mark) {
      const code = bytes[to] as number;
      if (code === 10 || code === 13) break;
      to++;
    }
    this.end = to;
    return this.idOf(bytes, from, to);
  }

  /** Number of the text in `bytes[from, to)`. */
  idOf(bytes: Buffer, from: number, to: number): number {
    const length = to - from;
    const mask = this.slots.length - 1;
    let slot = hashOf(bytes, from, to) & mask;
    let id = this.slots[slot] as number;
    while (id >= 0) {
      const start = this.starts[id] as number;
      if ((this.starts[id + 1] as number) - start === length && this.isAt(start, length, bytes, from)) break;
      slot = (slot + 1) & mask;
      id = this.slots[slot] as number;
    }
    if (id < 0) id = this.add(bytes, from, to, slot);
    if (this.last >= 0) this.followers[this.last] = id;
    this.last = id;
    return id;
  }

  private isAt(start: number, length: number, bytes: Buffer, from: number): boolean {
    const { pool } = this;
    // Names of one building begin alike and end apart.
    for (let i = length - 1; i >= 0; i--) if (pool[start + i] !== bytes[from + i]) return false;
    return true;
  }

  private add(bytes: Buffer, from: number, to: number, slot: number): number {
    const id = this.texts.length;
    const start = this.starts[id] as number;
    const end = start + to - from;
    if (end > this.pool.length) this.pool = enlarged(this.pool, Math.max(end, this.pool.length * 2));
    for (let i = from; i < to; i++) this.pool[start + i - from] = bytes[i] as number;
    if (id + 2 > this.starts.length) {
      const larger = new Int32Array(this.starts.length * 2);
      larger.set(this.starts);
      this.starts = larger;
      const followers = new Int32Array(larger.length).fill(-1);
      followers.set(this.followers);
      this.followers = followers;
    }
    this.starts[id + 1] = end;
    this.texts.push(bytes.toString("utf8", from, to));
    this.slots[slot] = id;
    if (this.texts.length * 2 > this.slots.length) this.enlarge();
    return id;
  }

  private enlarge(): void {
    this.slots = new Int32Array(this.slots.length * 2).fill(-1);
    const mask = this.slots.length - 1;
    for (let id = 0; id < this.texts.length; id++) {
      let slot = hashOf(this.pool, this.starts[id] as number, this.starts[id + 1] as number) & mask;
      while ((this.slots[slot] as number) >= 0) slot = (slot + 1) & mask;
      this.slots[slot] = id;
    }
  }
}

function hashOf(bytes: Uint8Array, from: number, to: number): number {
  let hash = 0x811c9dc5;
  for (let i = from; i < to; i++) hash = Math.imul(hash ^ (bytes[i] as number), 0x01000193);
  return hash ^ (hash >>> 15);
}

function enlarged(array: Uint8Array, length: number): Uint8Array<ArrayBuffer> {
  const larger = new Uint8Array(length);
  larger.set(array);
  return larger;
}
