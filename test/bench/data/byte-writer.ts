import { closeSync, openSync, writeSync } from "node:fs";

const BLOCK_BYTES = 1 << 20;
/** Room that one call may need. */
const RESERVE_BYTES = 4096;

/** Writes text to a file of any size through one block of memory. */
export class ByteWriter {
  bytes = 0;
  private readonly fd: number;
  private readonly block = Buffer.allocUnsafe(BLOCK_BYTES);
  private at = 0;

  constructor(file: string) {
    this.fd = openSync(file, "w");
  }

  text(text: string): void {
    if (this.at > BLOCK_BYTES - RESERVE_BYTES) this.flush();
    this.at += this.block.write(text, this.at, "utf8");
  }

  byte(code: number): void {
    if (this.at === BLOCK_BYTES) this.flush();
    this.block[this.at++] = code;
  }

  /** A whole number from 0 on; with `tenths`, its last digit stands behind the point. */
  number(value: number, tenths: boolean): void {
    if (this.at > BLOCK_BYTES - RESERVE_BYTES) this.flush();
    let rest = tenths ? Math.floor(value / 10) : value;
    let size = 1;
    for (let limit = 10; limit <= rest; limit *= 10) size++;
    for (let i = this.at + size - 1; i >= this.at; i--) {
      this.block[i] = 48 + (rest % 10);
      rest = Math.floor(rest / 10);
    }
    this.at += size;
    if (!tenths) return;
    this.block[this.at++] = 46;
    this.block[this.at++] = 48 + (value % 10);
  }

  close(): void {
    this.flush();
    closeSync(this.fd);
  }

  private flush(): void {
    writeSync(this.fd, this.block, 0, this.at);
    this.bytes += this.at;
    this.at = 0;
  }
}
