import { createHash } from "node:crypto";
import { closeSync, openSync, readSync, writeSync } from "node:fs";
import { parentPort, workerData } from "node:worker_threads";

/* Program of a thread: copies the file `from` to the new file `to` and reckons its SHA-256 on the way. */

const STRETCH_BYTES = 1_000_000;

const hash = createHash("sha256");
const source = openSync(workerData.from, "r");
const copy = openSync(workerData.to, "wx");
const buffer = Buffer.allocUnsafeSlow(STRETCH_BYTES);
let byteCount = 0;
for (;;) {
  const count = readSync(source, buffer, 0, STRETCH_BYTES, byteCount);
  if (count === 0) break;
  const stretch = buffer.subarray(0, count);
  hash.update(stretch);
  for (let at = 0; at < count; ) at += writeSync(copy, stretch, at);
  byteCount += count;
}
closeSync(source);
closeSync(copy);
parentPort?.postMessage({ sha256: hash.digest("hex"), byteCount });
