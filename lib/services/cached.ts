import { createHash } from "node:crypto";
import type { Context } from "./context";

/** Short hash of whatever a result depends on. */
export function fingerprintOf(parts: unknown): string {
  return createHash("sha256").update(JSON.stringify(parts)).digest("hex").slice(0, 32);
}

/** The kept result of a step of an analysis, or a new one when anything it depends on has changed. */
export async function cached<T>(
  ctx: Pick<Context, "results" | "now">,
  { buildingId, subject, fingerprint }: { buildingId: number; subject: string; fingerprint: string },
  compute: () => Promise<T>,
): Promise<{ result: T; computedAtMs: number }> {
  if (ctx.results.stamp(buildingId, subject)?.restsOn === fingerprint) {
    const kept = ctx.results.find(buildingId, subject);
    if (kept) return { result: kept.result as T, computedAtMs: kept.workedOutAtMs };
  }
  const result = await compute();
  ctx.results.save({ buildingId, subject, restsOn: fingerprint, workedOutAtMs: ctx.now, result });
  return { result, computedAtMs: ctx.now };
}
