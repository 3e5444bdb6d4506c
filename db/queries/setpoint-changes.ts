import { desc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { setpointChange } from "../schema/setpoint-change";

export type SetpointChangeRow = typeof setpointChange.$inferSelect;
export type NewSetpointChange = typeof setpointChange.$inferInsert;

export function insertSetpointChange(db: Queryable, row: NewSetpointChange): SetpointChangeRow {
  return db.insert(setpointChange).values(row).returning().get();
}

/** Of a building, latest change first. */
export const listSetpointChanges = (db: Queryable, buildingId: number): SetpointChangeRow[] =>
  db
    .select()
    .from(setpointChange)
    .where(eq(setpointChange.buildingId, buildingId))
    .orderBy(desc(setpointChange.atUtcSeconds), desc(setpointChange.id))
    .all();
