import { asc, eq, placeholder } from "drizzle-orm";
import type { DayInterval, OccupiedHours } from "@/lib/time/occupied-hours";
import type { Queryable } from "../client";
import { building, holiday, occupiedInterval } from "../schema/building";
import { preparedOnce } from "./prepared";

export type BuildingRow = typeof building.$inferSelect;
export type NewBuilding = typeof building.$inferInsert;

export function insertBuilding(db: Queryable, row: NewBuilding): BuildingRow {
  return db.insert(building).values(row).returning().get();
}

export function updateBuilding(db: Queryable, id: number, row: Partial<NewBuilding>): void {
  db.update(building).set(row).where(eq(building.id, id)).run();
}

const selectBuilding = preparedOnce((db) =>
  db
    .select()
    .from(building)
    .where(eq(building.id, placeholder("id")))
    .prepare(),
);

export function findBuilding(db: Queryable, id: number): BuildingRow | undefined {
  return selectBuilding(db).get({ id });
}

export function listBuildings(db: Queryable): BuildingRow[] {
  return db.select().from(building).orderBy(asc(building.name), asc(building.id)).all();
}

/** Puts the intervals and holidays of `hours` in place of what stood. */
export function replaceOccupiedHours(db: Queryable, buildingId: number, hours: OccupiedHours): void {
  db.delete(occupiedInterval).where(eq(occupiedInterval.buildingId, buildingId)).run();
  db.delete(holiday).where(eq(holiday.buildingId, buildingId)).run();
  for (const [weekday, intervals] of Object.entries(hours.weekdays)) {
    for (const each of intervals ?? []) {
      db.insert(occupiedInterval)
        .values({ buildingId, weekday: Number(weekday), ...each })
        .run();
    }
  }
  for (const date of hours.holidays) db.insert(holiday).values({ buildingId, date }).run();
}

export function findOccupiedHours(db: Queryable, buildingId: number): OccupiedHours {
  const weekdays: Record<number, DayInterval[]> = {};
  const rows = db
    .select()
    .from(occupiedInterval)
    .where(eq(occupiedInterval.buildingId, buildingId))
    .orderBy(asc(occupiedInterval.weekday), asc(occupiedInterval.startMinute))
    .all();
  for (const { weekday, startMinute, endMinute } of rows) {
    const list = weekdays[weekday] ?? [];
    list.push({ startMinute, endMinute });
    weekdays[weekday] = list;
  }
  const holidays = db
    .select()
    .from(holiday)
    .where(eq(holiday.buildingId, buildingId))
    .orderBy(asc(holiday.date))
    .all()
    .map((row) => row.date);
  return { weekdays, holidays };
}
