import { and, asc, eq, gt, lt } from "drizzle-orm";
import type { Queryable } from "../client";
import { electricityBill } from "../schema/electricity-bill";

export type ElectricityBillRow = typeof electricityBill.$inferSelect;
export type NewElectricityBill = typeof electricityBill.$inferInsert;

/** A building's bills in the order of time. */
export function listElectricityBills(db: Queryable, buildingId: number): ElectricityBillRow[] {
  return db
    .select()
    .from(electricityBill)
    .where(eq(electricityBill.buildingId, buildingId))
    .orderBy(asc(electricityBill.fromDate))
    .all();
}

/** The bill that begins on a day, if there is one. */
export function findElectricityBill(
  db: Queryable,
  buildingId: number,
  fromDate: string,
): ElectricityBillRow | undefined {
  return db
    .select()
    .from(electricityBill)
    .where(and(eq(electricityBill.buildingId, buildingId), eq(electricityBill.fromDate, fromDate)))
    .get();
}

export function insertElectricityBill(db: Queryable, row: NewElectricityBill): void {
  db.insert(electricityBill).values(row).run();
}

/** Ends the bills that cover a day, but begin before it, with the day before. */
export function endBillsBefore(db: Queryable, buildingId: number, date: string): void {
  db.update(electricityBill)
    .set({ untilDate: date })
    .where(
      and(
        eq(electricityBill.buildingId, buildingId),
        lt(electricityBill.fromDate, date),
        gt(electricityBill.untilDate, date),
      ),
    )
    .run();
}

/** True when there was such a bill. */
export function deleteElectricityBill(db: Queryable, buildingId: number, id: number): boolean {
  const gone = db
    .delete(electricityBill)
    .where(and(eq(electricityBill.buildingId, buildingId), eq(electricityBill.id, id)))
    .run();
  return gone.changes > 0;
}

export function updateElectricityBill(db: Queryable, id: number, row: Partial<NewElectricityBill>): void {
  db.update(electricityBill).set(row).where(eq(electricityBill.id, id)).run();
}
