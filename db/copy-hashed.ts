import { statSync } from "node:fs";
import { Worker } from "node:worker_threads";
import { copyFile } from "./copy-file.mjs";

/** The SHA-256 of some bytes in hexadecimal, and how many they are. */
export type HashedBytes = { sha256: string; byteCount: number };

/** Files of so many bytes are copied by a thread: whoever asks can go on meanwhile. A smaller one is copied before that starts. */
export const THREAD_BYTES = 16_000_000;

/** Copies the file `from` to the new file `to`, and reckons its SHA-256 on the way. */
export async function copyHashed(to: string, from: string): Promise<HashedBytes> {
  // The thread starts before anything is waited for: whoever asks may be busy afterwards.
  return statSync(from).size < THREAD_BYTES ? copyFile(from, to) : copyInThread(to, from);
}

function copyInThread(to: string, from: string): Promise<HashedBytes> {
  return new Promise((resolve, reject) => {
    const program = new URL("./copy-thread.mjs", import.meta.url);
    const thread = new Worker(program, { workerData: { from, to }, execArgv: [] });
    thread.once("message", resolve);
    thread.once("error", reject);
    thread.once("exit", () => reject(new Error("the thread that copies a file ended without a word")));
  });
}
