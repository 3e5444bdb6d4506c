import { createHash } from "node:crypto";
import { closeSync, openSync, readSync, writeSync } from "node:fs";

/** Bytes that are read at a time. */
const STRETCH_BYTES = 1_000_000;

/**
 * Copies the file `from` to the new file `to`, and reckons the SHA-256 of its bytes on the way.
 *
 * @param {string} from
 * @param {string} to
 */
export function copyFile(from, to) {
  const hash = createHash("sha256");
  const buffer = Buffer.allocUnsafeSlow(STRETCH_BYTES);
  let byteCount = 0;
  const source = openSync(from, "r");
  try {
    const copy = openSync(to, "wx");
    try {
      for (;;) {
        const count = readSync(source, buffer, 0, STRETCH_BYTES, byteCount);
        if (count === 0) return { sha256: hash.digest("hex"), byteCount };
        const stretch = buffer.subarray(0, count);
        hash.update(stretch);
        for (let at = 0; at < count; ) at += writeSync(copy, stretch, at);
        byteCount += count;
      }
    } finally {
      closeSync(copy);
    }
  } finally {
    closeSync(source);
  }
}
