import { createHash } from "node:crypto";
import { findCachedResult, saveCachedResult } from "@/db/queries/result-cache";
import type { Context } from "./context";

/** Short hash of whatever a result depends on. */
export function fingerprintOf(parts: unknown): string {
  return createHash("sha256").update(JSON.stringify(parts)).digest("hex").slice(0, 32);
}

/** The kept result of an analysis, or a new one when anything it depends on has changed. */
export async function cached<T>(
  ctx: Context,
  about: { buildingId: number; subject: string; fingerprint: string },
  compute: () => Promise<T>,
): Promise<{ result: T; computedAtMs: number }> {
  const kept = findCachedResult(ctx.db, about.buildingId, about.subject);
  if (kept?.fingerprint === about.fingerprint) return { result: kept.result as T, computedAtMs: kept.computedAtMs };
  const result = await compute();
  saveCachedResult(ctx.db, { ...about, result, computedAtMs: ctx.now });
  return { result, computedAtMs: ctx.now };
}
