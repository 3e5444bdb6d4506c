import { randomBytes } from "node:crypto";
import { existsSync, linkSync, readFileSync, unlinkSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { AppDatabase } from "@/db/client";

const FILE_NAME = "sign-in-secret";

/**
 * The secret that signs session cookies: 32 random bytes made at first use, in a file beside the database that only
 * its owner may read. A database in memory gets one for its lifetime. Deleting the file signs everyone out.
 */
export function signInSecret(db: AppDatabase): string {
  if (db.$client.memory) return randomBytes(32).toString("base64url");
  const file = path.join(path.dirname(db.$client.name), FILE_NAME);
  if (!existsSync(file)) makeSecret(file);
  const secret = readFileSync(file, "utf8").trim();
  if (secret.length < 32) throw new Error(`${FILE_NAME} in the data folder is damaged: delete it and start again`);
  return secret;
}

/** Written under another name and then linked, so that a second process sees the whole file or none. */
function makeSecret(file: string): void {
  const draft = `${file}.${process.pid}`;
  writeFileSync(draft, `${randomBytes(32).toString("base64url")}\n`, { mode: 0o600, flag: "wx" });
  try {
    linkSync(draft, file);
  } catch (error) {
    if (!existsSync(file)) throw error;
  } finally {
    unlinkSync(draft);
  }
}
