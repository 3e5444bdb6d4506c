import { createHash } from "node:crypto";
import { createReadStream, mkdirSync, readdirSync, statfsSync, statSync } from "node:fs";
import { type FileHandle, open, rm } from "node:fs/promises";
import path from "node:path";

/** A part of a file: where it begins, the most bytes that it may have, and their SHA-256 when the sender says it. */
export type Part = { offset: number; atMost: number; bytes: AsyncIterable<Uint8Array>; sha256?: string };

/**
 * `appended`: all of the part is on the disk. `cut-off`: its source failed or a newer request took over; what came is
 * kept. `elsewhere`: the file does not end at the part's offset. `too-many-bytes`, `wrong-digest`: nothing of the part
 * is kept. `gone`: there is no such file. `length` is that of the file now.
 */
export type Appended = {
  status: "appended" | "cut-off" | "elsewhere" | "too-many-bytes" | "wrong-digest" | "no-space" | "gone";
  length: number;
};

/** Files on their way in, by an id; the length of a file is how much of it has come. */
export type PassingFiles = {
  make(id: string): Promise<void>;
  /** Bytes that are there, or null without such a file. */
  length(id: string): number | null;
  /** Ends a part that is being written, keeps what came of it, and gives the length. */
  settledLength(id: string): Promise<number | null>;
  append(id: string, part: Part): Promise<Appended>;
  /** SHA-256 of the file as it lies there, in hexadecimal. */
  sha256(id: string): Promise<string>;
  /** Where the file lies. */
  place(id: string): string;
  remove(id: string): Promise<void>;
  list(): { id: string; changedAtMs: number }[];
  /** Room on the disk that a file may take [bytes]. */
  freeBytes(): number;
};

/**
 * Passing files in a folder of their own. One part is written at a time: a newer request for the same file ends the
 * one before it, which may wait for a line that has dropped. A part is answered for only when it is on the disk.
 */
export function openPassingFiles(folder: string): PassingFiles {
  const writers = new Map<string, { stop: () => void; ended: Promise<unknown> }>();
  const place = (id: string): string => {
    if (!/^[\w-]{20,64}$/.test(id)) throw new RangeError("a passing file is named by its id alone");
    return path.join(folder, `${id}.part`);
  };
  const length = (id: string): number | null => statSync(place(id), { throwIfNoEntry: false })?.size ?? null;
  const stopWriter = async (id: string): Promise<void> => {
    for (let writer = writers.get(id); writer; writer = writers.get(id)) {
      writer.stop();
      await writer.ended;
    }
  };
  return {
    place,
    length,
    async make(id) {
      mkdirSync(folder, { recursive: true });
      await (await open(place(id), "wx", 0o600)).close();
    },
    async settledLength(id) {
      await stopWriter(id);
      return length(id);
    },
    async append(id, part) {
      await stopWriter(id);
      const stopper = new AbortController();
      const ended = appendPart(place(id), part, stopper.signal);
      const writer = { stop: () => stopper.abort(), ended: ended.catch(() => {}) };
      writers.set(id, writer);
      try {
        return await ended;
      } finally {
        if (writers.get(id) === writer) writers.delete(id);
      }
    },
    async sha256(id) {
      const hash = createHash("sha256");
      for await (const chunk of createReadStream(place(id), { highWaterMark: 1 << 20 })) hash.update(chunk);
      return hash.digest("hex");
    },
    async remove(id) {
      await stopWriter(id);
      await rm(place(id), { force: true });
    },
    list() {
      mkdirSync(folder, { recursive: true });
      return readdirSync(folder).flatMap((name) => {
        const found = name.endsWith(".part") ? statSync(path.join(folder, name), { throwIfNoEntry: false }) : undefined;
        return found ? [{ id: name.slice(0, -".part".length), changedAtMs: found.mtimeMs }] : [];
      });
    },
    freeBytes() {
      mkdirSync(folder, { recursive: true });
      const { bavail, bsize } = statfsSync(folder);
      return bavail * bsize;
    },
  };
}

async function appendPart(file: string, part: Part, stop: AbortSignal): Promise<Appended> {
  const handle = await open(file, "r+").catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return null;
    throw error;
  });
  if (!handle) return { status: "gone", length: 0 };
  try {
    const { size } = await handle.stat();
    if (size !== part.offset) return { status: "elsewhere", length: size };
    const status = await writePart(handle, part, stop);
    if (status === "too-many-bytes" || status === "wrong-digest") await handle.truncate(part.offset);
    await handle.datasync();
    return { status, length: (await handle.stat()).size };
  } finally {
    await handle.close();
  }
}

async function writePart(handle: FileHandle, part: Part, stop: AbortSignal): Promise<Appended["status"]> {
  const hash = part.sha256 ? createHash("sha256") : null;
  let at = part.offset;
  try {
    for await (const chunk of until(stop, part.bytes)) {
      if (at + chunk.byteLength > part.offset + part.atMost) return "too-many-bytes";
      hash?.update(chunk);
      for (let done = 0; done < chunk.byteLength; )
        done += (await handle.write(chunk, done, chunk.byteLength - done, at + done)).bytesWritten;
      at += chunk.byteLength;
    }
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "ENOSPC" ? "no-space" : "cut-off";
  }
  return hash && hash.digest("hex") !== part.sha256 ? "wrong-digest" : "appended";
}

/** Chunks of a source until it ends; throws as soon as it is told to stop, even while the source keeps it waiting. */
async function* until(stop: AbortSignal, source: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const chunks = source[Symbol.asyncIterator]();
  const stopped = new Promise<never>((_, reject) => {
    const end = () => reject(new Error("a newer request for the same file took over"));
    if (stop.aborted) end();
    stop.addEventListener("abort", end, { once: true });
  });
  stopped.catch(() => {});
  try {
    for (;;) {
      const next = await Promise.race([chunks.next(), stopped]);
      if (next.done) return;
      yield next.value;
    }
  } finally {
    // Not waited for: a source that has gone silent would never answer.
    void Promise.resolve(chunks.return?.()).catch(() => {});
  }
}
