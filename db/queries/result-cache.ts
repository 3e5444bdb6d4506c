import { and, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { resultCache } from "../schema/result-cache";

export type CachedResult = typeof resultCache.$inferSelect;

export function findCachedResult(db: Queryable, buildingId: number, subject: string): CachedResult | undefined {
  return db
    .select()
    .from(resultCache)
    .where(and(eq(resultCache.buildingId, buildingId), eq(resultCache.subject, subject)))
    .get();
}

export function saveCachedResult(db: Queryable, row: CachedResult): void {
  db.insert(resultCache)
    .values(row)
    .onConflictDoUpdate({
      target: [resultCache.buildingId, resultCache.subject],
      set: { fingerprint: row.fingerprint, result: row.result, computedAtMs: row.computedAtMs },
    })
    .run();
}
