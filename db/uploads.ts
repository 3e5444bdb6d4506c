import { createHash, randomUUID } from "node:crypto";
import {
  closeSync,
  createReadStream,
  existsSync,
  fsync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
} from "node:fs";
import { open, rename, rm } from "node:fs/promises";
import path from "node:path";
import { promisify } from "node:util";
import type { ByteSource } from "@/lib/importers/trend-csv/byte-source";
import { copyHashed, type HashedBytes } from "./copy-hashed";

export { THREAD_BYTES } from "./copy-hashed";

/** A kept file, open for reading where asked. Close it. */
export type OpenUpload = ByteSource & { close(): void };

/** Bytes as they come, or the path of a file that has them. */
export type UploadBytes = AsyncIterable<Uint8Array> | Iterable<Uint8Array> | string;

export type SavedUpload = HashedBytes;

/** A file that may be kept in memory only: nobody may be told that it is safe before `toDisk` has ended. */
export type TakenUpload = SavedUpload & { toDisk(): Promise<void> };

/** Where imported files are kept as they came, by the SHA-256 of their bytes. */
export type UploadFolder = {
  /** Keeps bytes as they come, without ever holding them all. Nothing is kept when their source fails. */
  saveFrom(bytes: UploadBytes): Promise<SavedUpload>;
  /** The same, without the wait for the disk: the file can be read at once. */
  takeFrom(bytes: UploadBytes): Promise<TakenUpload>;
  /** Takes over a file of the same disk whose SHA-256 was found before: it is moved here, not copied. */
  adopt(file: string, sha256: string): Promise<void>;
  /** The file to read from, or null when it was never kept. */
  open(sha256: string): OpenUpload | null;
  /** Forgets a file; one that was never kept is no error. */
  remove(sha256: string): void;
  /** All of the file's bytes, or null when it was never kept: for small files only. */
  read(sha256: string): Uint8Array | null;
};

/** A folder of files. A file is written under a passing name first, so that a half-written one is never taken for whole. */
export function openUploadFolder(folder: string): UploadFolder {
  const place = (sha256: string) => path.join(folder, checkedHash(sha256));
  const take = async (bytes: UploadBytes): Promise<TakenUpload> => {
    mkdirSync(folder, { recursive: true });
    const passing = path.join(folder, `${process.pid}-${randomUUID()}.part`);
    try {
      const saved = await (typeof bytes === "string" ? copyHashed(passing, bytes) : writeHashed(passing, bytes));
      const file = place(saved.sha256);
      // Not waited for: while a file is read, each wait takes as long as a part of it.
      renameSync(passing, file);
      return { ...saved, toDisk: () => syncFile(file) };
    } finally {
      rmSync(passing, { force: true });
    }
  };
  return {
    async saveFrom(bytes) {
      const { toDisk, ...saved } = await take(bytes);
      await toDisk();
      return saved;
    },
    takeFrom: take,
    async adopt(file, sha256) {
      mkdirSync(folder, { recursive: true });
      await rename(file, place(sha256));
    },
    open(sha256) {
      const file = place(sha256);
      return existsSync(file) ? openFile(file) : null;
    },
    remove: (sha256) => rmSync(place(sha256), { force: true }),
    read(sha256) {
      const file = place(sha256);
      return existsSync(file) ? readFileSync(file) : null;
    },
  };
}

/** Begins at once: whoever calls it may be busy for a second and let nothing else begin. */
async function syncFile(file: string): Promise<void> {
  const descriptor = openSync(file, "r+");
  try {
    await promisify(fsync)(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

async function writeHashed(file: string, bytes: Exclude<UploadBytes, string>): Promise<SavedUpload> {
  const hash = createHash("sha256");
  let byteCount = 0;
  const handle = await open(file, "wx");
  try {
    for await (const chunk of bytes) {
      hash.update(chunk);
      byteCount += chunk.byteLength;
      await handle.appendFile(chunk);
    }
  } finally {
    await handle.close();
  }
  return { sha256: hash.digest("hex"), byteCount };
}

/** A file to read from, wherever it lies. Throws when there is none. */
export function openFile(file: string): OpenUpload {
  const descriptor = openSync(file, "r");
  const { size } = statSync(file);
  return {
    size,
    read(offset, length) {
      const bytes = new Uint8Array(Math.max(0, Math.min(length, size - offset)));
      return bytes.subarray(0, readInto(descriptor, offset, bytes));
    },
    readInto: (offset, target) => readInto(descriptor, offset, target),
    close: () => closeSync(descriptor),
  };
}

function readInto(descriptor: number, offset: number, target: Uint8Array): number {
  let filled = 0;
  while (filled < target.length) {
    const count = readSync(descriptor, target, filled, target.length - filled, offset + filled);
    if (count === 0) break;
    filled += count;
  }
  return filled;
}

function checkedHash(sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new RangeError("a file is kept under its SHA-256 in hexadecimal");
  return sha256;
}

/** Keeps files in memory only, for tests. */
export function memoryUploads(): UploadFolder {
  const files = new Map<string, Uint8Array>();
  const saveFrom = async (bytes: UploadBytes): Promise<SavedUpload> => {
    const chunks: Uint8Array[] = [];
    for await (const chunk of typeof bytes === "string" ? createReadStream(bytes) : bytes) chunks.push(chunk);
    const whole = Uint8Array.from(Buffer.concat(chunks));
    const sha256 = createHash("sha256").update(whole).digest("hex");
    files.set(sha256, whole);
    return { sha256, byteCount: whole.byteLength };
  };
  return {
    saveFrom,
    takeFrom: async (bytes) => ({ ...(await saveFrom(bytes)), toDisk: async () => {} }),
    async adopt(file, sha256) {
      files.set(checkedHash(sha256), Uint8Array.from(readFileSync(file)));
      await rm(file);
    },
    open(sha256) {
      const bytes = files.get(checkedHash(sha256));
      return bytes
        ? { size: bytes.length, read: (offset, length) => bytes.subarray(offset, offset + length), close: () => {} }
        : null;
    },
    remove: (sha256) => void files.delete(checkedHash(sha256)),
    read: (sha256) => files.get(checkedHash(sha256)) ?? null,
  };
}
