import { and, count, eq, placeholder } from "drizzle-orm";
import { naturalCompare } from "@/lib/order/natural-compare";
import type { Queryable } from "../client";
import { desk, zone } from "../schema/zone";
import { preparedOnce } from "./prepared";

export type ZoneRow = typeof zone.$inferSelect;
export type NewZone = typeof zone.$inferInsert;
export type DeskRow = typeof desk.$inferSelect;
export type NewDesk = typeof desk.$inferInsert;

export function insertZone(db: Queryable, row: NewZone): ZoneRow {
  return db.insert(zone).values(row).returning().get();
}

export function updateZone(db: Queryable, id: number, row: Partial<NewZone>): void {
  db.update(zone).set(row).where(eq(zone.id, id)).run();
}

export function findZone(db: Queryable, buildingId: number, id: number): ZoneRow | undefined {
  return db
    .select()
    .from(zone)
    .where(and(eq(zone.buildingId, buildingId), eq(zone.id, id)))
    .get();
}

export function findZoneByCode(db: Queryable, buildingId: number, code: string): ZoneRow | undefined {
  return db
    .select()
    .from(zone)
    .where(and(eq(zone.buildingId, buildingId), eq(zone.code, code)))
    .get();
}

const selectZones = preparedOnce((db) =>
  db
    .select()
    .from(zone)
    .where(eq(zone.buildingId, placeholder("buildingId")))
    .prepare(),
);

/** Zones by floor and code in their natural order: VAV-2 before VAV-10. */
export function listZones(db: Queryable, buildingId: number): ZoneRow[] {
  const zones = selectZones(db).all({ buildingId });
  return zones.sort((a, b) => naturalCompare(a.floor, b.floor) || naturalCompare(a.code, b.code));
}

export function insertDesk(db: Queryable, row: NewDesk): DeskRow {
  return db.insert(desk).values(row).returning().get();
}

export function updateDesk(db: Queryable, id: number, row: Partial<NewDesk>): void {
  db.update(desk).set(row).where(eq(desk.id, id)).run();
}

export function findDesk(db: Queryable, buildingId: number, id: number): DeskRow | undefined {
  return db
    .select()
    .from(desk)
    .where(and(eq(desk.buildingId, buildingId), eq(desk.id, id)))
    .get();
}

export function findDeskByCode(db: Queryable, buildingId: number, code: string): DeskRow | undefined {
  return db
    .select()
    .from(desk)
    .where(and(eq(desk.buildingId, buildingId), eq(desk.code, code)))
    .get();
}

/** Desks by code in its natural order. */
export function listDesks(db: Queryable, buildingId: number): DeskRow[] {
  const desks = db.select().from(desk).where(eq(desk.buildingId, buildingId)).all();
  return desks.sort((a, b) => naturalCompare(a.code, b.code));
}

export function countDesksByZone(db: Queryable, buildingId: number): Map<number, number> {
  const rows = db
    .select({ zoneId: desk.zoneId, desks: count() })
    .from(desk)
    .where(eq(desk.buildingId, buildingId))
    .groupBy(desk.zoneId)
    .all();
  return new Map(rows.map((row) => [row.zoneId, row.desks]));
}
