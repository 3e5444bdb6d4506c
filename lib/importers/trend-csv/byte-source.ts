/** A file's bytes, read where asked: a file of any size is never held whole. `read` returns what there is up to `length`. */
export type ByteSource = {
  /** Bytes in all. */
  size: number;
  read(offset: number, length: number): Uint8Array;
  /** Reads straight into `target`, when the source can; returns how many bytes there were. */
  readInto?(offset: number, target: Uint8Array): number;
};

/** Bytes in memory as a source. */
export const bytesInMemory = (bytes: Uint8Array): ByteSource => ({
  size: bytes.length,
  read: (offset, length) => bytes.subarray(offset, offset + length),
});
