import { and, desc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { collectorToken } from "../schema/collector";

export type CollectorTokenRow = typeof collectorToken.$inferSelect;
export type NewCollectorToken = typeof collectorToken.$inferInsert;

export function insertCollectorToken(db: Queryable, row: NewCollectorToken): CollectorTokenRow {
  return db.insert(collectorToken).values(row).returning().get();
}

export function findCollectorTokenByHash(db: Queryable, tokenHash: string): CollectorTokenRow | undefined {
  return db.select().from(collectorToken).where(eq(collectorToken.tokenHash, tokenHash)).get();
}

export function findCollectorToken(db: Queryable, buildingId: number, id: number): CollectorTokenRow | undefined {
  return db
    .select()
    .from(collectorToken)
    .where(and(eq(collectorToken.buildingId, buildingId), eq(collectorToken.id, id)))
    .get();
}

/** Every token that was made for a building, newest first; revoked ones too. */
export function listCollectorTokens(db: Queryable, buildingId: number): CollectorTokenRow[] {
  return db
    .select()
    .from(collectorToken)
    .where(eq(collectorToken.buildingId, buildingId))
    .orderBy(desc(collectorToken.createdAtMs), desc(collectorToken.id))
    .all();
}

export function updateCollectorToken(
  db: Queryable,
  id: number,
  row: Pick<NewCollectorToken, "lastUsedAtMs" | "revokedAtMs">,
): void {
  db.update(collectorToken).set(row).where(eq(collectorToken.id, id)).run();
}
