import { and, asc, eq, isNull } from "drizzle-orm";
import type { Queryable } from "../client";
import { assumptionOverride } from "../schema/assumption-override";

export type AssumptionOverrideRow = typeof assumptionOverride.$inferSelect;
export type NewAssumptionOverride = typeof assumptionOverride.$inferInsert;

export function listCurrentOverrides(db: Queryable, buildingId: number): AssumptionOverrideRow[] {
  return db
    .select()
    .from(assumptionOverride)
    .where(and(eq(assumptionOverride.buildingId, buildingId), isNull(assumptionOverride.endedAtMs)))
    .all();
}

/** Every override there ever was of an assumption, oldest first. */
export function listOverrideHistory(db: Queryable, buildingId: number, assumptionId: string): AssumptionOverrideRow[] {
  return db
    .select()
    .from(assumptionOverride)
    .where(and(eq(assumptionOverride.buildingId, buildingId), eq(assumptionOverride.assumptionId, assumptionId)))
    .orderBy(asc(assumptionOverride.id))
    .all();
}

export function endOverride(
  db: Queryable,
  buildingId: number,
  assumptionId: string,
  end: { endedAtMs: number; endedBy: string },
): number {
  return db
    .update(assumptionOverride)
    .set(end)
    .where(
      and(
        eq(assumptionOverride.buildingId, buildingId),
        eq(assumptionOverride.assumptionId, assumptionId),
        isNull(assumptionOverride.endedAtMs),
      ),
    )
    .run().changes;
}

export function insertOverride(db: Queryable, row: NewAssumptionOverride): AssumptionOverrideRow {
  return db.insert(assumptionOverride).values(row).returning().get();
}
