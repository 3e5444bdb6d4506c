import { createHash } from "node:crypto";
import { statSync } from "node:fs";
import { type FileHandle, open, rm } from "node:fs/promises";
import { Worker } from "node:worker_threads";

/** The SHA-256 of some bytes in hexadecimal, and how many they are. */
export type HashedBytes = { sha256: string; byteCount: number };

/** Files of so many bytes are copied by a thread: whoever asks can go on meanwhile. A smaller one is copied before that starts. */
export const THREAD_BYTES = 16_000_000;

/** Copies the file `from` to the new file `to`, and reckons its SHA-256 on the way. */
export async function copyHashed(to: string, from: string): Promise<HashedBytes> {
  // The thread starts before anything is waited for: whoever asks may be busy afterwards.
  const { size } = statSync(from);
  if (size < THREAD_BYTES) return copyHere(to, from);
  try {
    return await copyInThread(to, from);
  } catch {
    // A full disk is told of by the second try; a thread that does not start does not matter.
    await rm(to, { force: true });
    return copyHere(to, from);
  }
}

function copyInThread(to: string, from: string): Promise<HashedBytes> {
  return new Promise((resolve, reject) => {
    const program = new URL("./copy-thread.mjs", import.meta.url);
    const thread = new Worker(program, { workerData: { from, to }, execArgv: [] });
    thread.once("message", resolve);
    thread.once("error", reject);
    thread.once("exit", () => reject(new Error("the thread ended without a word")));
  });
}

async function copyHere(to: string, from: string): Promise<HashedBytes> {
  const source = await open(from, "r");
  try {
    const copy = await open(to, "wx");
    try {
      return await copyStretches(source, copy);
    } finally {
      await copy.close();
    }
  } finally {
    await source.close();
  }
}

/** Bytes that are read at a time. */
const STRETCH_BYTES = 1_000_000;

/** Each stretch is reckoned in while it is written and the next is read. */
async function copyStretches(source: FileHandle, copy: FileHandle): Promise<HashedBytes> {
  const hash = createHash("sha256");
  const buffers = [Buffer.allocUnsafeSlow(STRETCH_BYTES), Buffer.allocUnsafeSlow(STRETCH_BYTES)] as const;
  let byteCount = 0;
  let reading = source.read(buffers[0], 0, STRETCH_BYTES);
  for (let turn = 1; ; turn++) {
    const { bytesRead, buffer } = await reading;
    if (bytesRead === 0) return { sha256: hash.digest("hex"), byteCount };
    reading = source.read(buffers[(turn % 2) as 0 | 1], 0, STRETCH_BYTES);
    const stretch = buffer.subarray(0, bytesRead);
    const writing = writeWhole(copy, stretch);
    hash.update(stretch);
    byteCount += bytesRead;
    // The next stretch but one is read into this buffer.
    await Promise.all([writing, reading]);
  }
}

/** A write may take less than it was given. */
async function writeWhole(handle: FileHandle, bytes: Buffer): Promise<void> {
  for (let at = 0; at < bytes.length; ) at += (await handle.write(bytes, at)).bytesWritten;
}
