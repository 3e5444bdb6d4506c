import { and, asc, eq, placeholder, sql } from "drizzle-orm";
import type { Queryable } from "../client";
import { point } from "../schema/trend-import";
import { preparedOnce } from "./prepared";

export type PointRow = typeof point.$inferSelect;
export type NewPoint = typeof point.$inferInsert;

const selectPoints = preparedOnce((db) =>
  db
    .select()
    .from(point)
    .where(eq(point.buildingId, placeholder("buildingId")))
    .orderBy(asc(point.externalName))
    .prepare(),
);

export function listPoints(db: Queryable, buildingId: number): PointRow[] {
  return selectPoints(db).all({ buildingId });
}

export function listZonePoints(db: Queryable, zoneId: number): PointRow[] {
  return db.select().from(point).where(eq(point.zoneId, zoneId)).orderBy(asc(point.id)).all();
}

/** Points of the whole building: outdoor and supply air. */
export function listBuildingPoints(db: Queryable, buildingId: number): PointRow[] {
  return listPoints(db, buildingId).filter((each) => each.zoneId === null);
}

export function findPointByName(db: Queryable, buildingId: number, externalName: string): PointRow | undefined {
  return db
    .select()
    .from(point)
    .where(and(eq(point.buildingId, buildingId), eq(point.externalName, externalName)))
    .get();
}

/** Makes the point or brings its mapping up to date; the id, and with it the series, stays. */
export function upsertPoint(db: Queryable, row: NewPoint): PointRow {
  return db
    .insert(point)
    .values(row)
    .onConflictDoUpdate({
      target: [point.buildingId, point.externalName],
      set: { kind: row.kind, zoneId: row.zoneId ?? null, fileUnit: row.fileUnit, sampling: row.sampling },
    })
    .returning()
    .get();
}

/** The same for several points in one statement. */
export function upsertPoints(db: Queryable, rows: readonly NewPoint[]): PointRow[] {
  return db
    .insert(point)
    .values([...rows])
    .onConflictDoUpdate({
      target: [point.buildingId, point.externalName],
      set: {
        kind: sql`excluded.kind`,
        zoneId: sql`excluded.zone_id`,
        fileUnit: sql`excluded.file_unit`,
        sampling: sql`excluded.sampling`,
      },
    })
    .returning()
    .all();
}

/** Gives a point its new name; its id, and with it the series, stays. Nothing when no point has the old one. */
export function renamePoint(db: Queryable, buildingId: number, from: string, to: string): void {
  db.update(point)
    .set({ externalName: to })
    .where(and(eq(point.buildingId, buildingId), eq(point.externalName, from)))
    .run();
}
