import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";

/** Where imported files are kept as they came, by the SHA-256 of their bytes. */
export type UploadFolder = {
  save(sha256: string, bytes: Uint8Array): void;
  /** The file's bytes, or null when it was never kept. */
  read(sha256: string): Uint8Array | null;
};

/** A folder of files. A file is written under a passing name first, so that a half-written one is never taken for whole. */
export function openUploadFolder(folder: string): UploadFolder {
  const place = (sha256: string) => {
    if (!/^[0-9a-f]{64}$/.test(sha256)) throw new RangeError("a file is kept under its SHA-256 in hexadecimal");
    return path.join(folder, sha256);
  };
  return {
    save(sha256, bytes) {
      const file = place(sha256);
      if (existsSync(file)) return;
      mkdirSync(folder, { recursive: true });
      const passing = `${file}.${process.pid}.part`;
      writeFileSync(passing, bytes);
      renameSync(passing, file);
    },
    read(sha256) {
      const file = place(sha256);
      return existsSync(file) ? readFileSync(file) : null;
    },
  };
}

/** Keeps files in memory only, for tests. */
export function memoryUploads(): UploadFolder {
  const files = new Map<string, Uint8Array>();
  return { save: (sha256, bytes) => void files.set(sha256, bytes), read: (sha256) => files.get(sha256) ?? null };
}
