import { areEqual } from "./byte-compare";
import { fieldEnd } from "./plain-field";

/** Gives each different text among the fields of some bytes a number, without making a string of a text that was met before. */
export class FieldNames {
  readonly texts: string[] = [];
  /** Where each text was met first, and how long it is. */
  starts = new Int32Array(64);
  lengths = new Int32Array(64);
  private slots = new Int32Array(256).fill(-1);
  /** The text that followed each one when it was met last: a long table goes through its points again and again. */
  followers = new Int32Array(64).fill(-1);
  /** The text that was met last. */
  last = -1;
  private readonly view: DataView;

  /** Where the field that was asked for last ends. */
  end = 0;

  constructor(private readonly bytes: Buffer) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  }

  /**
   * Number of the field that begins at `from`, quotes about it included, from 0 as the texts came; -1, with nothing
   * read, where it takes a closer look to tell how far it goes.
   */
  idAt(from: number, mark: number): number {
    const { bytes } = this;
    const expected = this.last < 0 ? -1 : (this.followers[this.last] as number);
    if (expected >= 0) {
      const length = this.lengths[expected] as number;
      if (bytes[from + length] === mark && areEqual(this.view, this.starts[expected] as number, from, length)) {
        this.end = from + length;
        this.last = expected;
        return expected;
      }
    }
    const to = fieldEnd(bytes, from, mark);
    this.end = Math.max(from, to);
    return to < 0 ? -1 : this.idOf(from, to);
  }

  /** Number of the text in `[from, to)`. */
  idOf(from: number, to: number): number {
    const length = to - from;
    const mask = this.slots.length - 1;
    let slot = this.hashOf(from, to) & mask;
    let id = this.slots[slot] as number;
    while (id >= 0) {
      if (this.lengths[id] === length && areEqual(this.view, this.starts[id] as number, from, length)) break;
      slot = (slot + 1) & mask;
      id = this.slots[slot] as number;
    }
    if (id < 0) id = this.add(from, to, slot);
    if (this.last >= 0) this.followers[this.last] = id;
    this.last = id;
    return id;
  }

  private add(from: number, to: number, slot: number): number {
    const id = this.texts.length;
    if (id === this.starts.length) {
      this.starts = enlarged(this.starts);
      this.lengths = enlarged(this.lengths);
      this.followers = enlarged(this.followers).fill(-1, id);
    }
    this.starts[id] = from;
    this.lengths[id] = to - from;
    this.texts.push(this.bytes.toString("utf8", from, to));
    this.slots[slot] = id;
    if (this.texts.length * 2 > this.slots.length) this.spread();
    return id;
  }

  private spread(): void {
    this.slots = new Int32Array(this.slots.length * 2).fill(-1);
    const mask = this.slots.length - 1;
    for (let id = 0; id < this.texts.length; id++) {
      const start = this.starts[id] as number;
      let slot = this.hashOf(start, start + (this.lengths[id] as number)) & mask;
      while ((this.slots[slot] as number) >= 0) slot = (slot + 1) & mask;
      this.slots[slot] = id;
    }
  }

  private hashOf(from: number, to: number): number {
    let hash = 0x811c9dc5;
    for (let i = from; i < to; i++) hash = Math.imul(hash ^ (this.bytes[i] as number), 0x01000193);
    return hash ^ (hash >>> 15);
  }
}

function enlarged(array: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(array.length * 2);
  larger.set(array);
  return larger;
}
