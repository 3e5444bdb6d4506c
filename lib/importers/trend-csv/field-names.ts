/** Gives each different text among fields a number, without making a string of a text that was met before. */
export class FieldNames {
  readonly texts: string[] = [];
  private readonly spans: Buffer[] = [];
  private slots = new Int32Array(1024).fill(-1);
  private last = -1;

  /** Number of the text in `bytes[from, to)`, from 0 in the order in which the texts came. */
  idOf(bytes: Buffer, from: number, to: number): number {
    if (this.last >= 0 && this.isSame(this.last, bytes, from, to)) return this.last;
    let hash = 0x811c9dc5;
    for (let i = from; i < to; i++) hash = Math.imul(hash ^ (bytes[i] as number), 0x01000193);
    const mask = this.slots.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (;;) {
      const id = this.slots[slot] as number;
      if (id < 0) break;
      if (this.isSame(id, bytes, from, to)) {
        this.last = id;
        return id;
      }
      slot = (slot + 1) & mask;
    }
    return this.add(bytes, from, to, slot);
  }

  private isSame(id: number, bytes: Buffer, from: number, to: number): boolean {
    const known = this.spans[id] as Buffer;
    if (known.length !== to - from) return false;
    // Names of one building begin alike and end apart.
    for (let i = known.length - 1; i >= 0; i--) if (known[i] !== bytes[from + i]) return false;
    return true;
  }

  private add(bytes: Buffer, from: number, to: number, slot: number): number {
    const id = this.texts.length;
    this.spans.push(Buffer.from(bytes.subarray(from, to)));
    this.texts.push(bytes.toString("utf8", from, to));
    this.slots[slot] = id;
    this.last = id;
    if (this.texts.length * 2 > this.slots.length) this.enlarge();
    return id;
  }

  private enlarge(): void {
    const texts = this.spans;
    this.slots = new Int32Array(this.slots.length * 2).fill(-1);
    const mask = this.slots.length - 1;
    texts.forEach((span, id) => {
      let hash = 0x811c9dc5;
      for (const byte of span) hash = Math.imul(hash ^ byte, 0x01000193);
      let slot = (hash ^ (hash >>> 15)) & mask;
      while ((this.slots[slot] as number) >= 0) slot = (slot + 1) & mask;
      this.slots[slot] = id;
    });
  }
}
