import { eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { tariff } from "../schema/tariff";

export type TariffRow = typeof tariff.$inferSelect;
export type NewTariff = typeof tariff.$inferInsert & { buildingId: number };

export function findTariff(db: Queryable, buildingId: number): TariffRow | undefined {
  return db.select().from(tariff).where(eq(tariff.buildingId, buildingId)).get();
}

/** A building has one tariff: the new one takes the place of the old. */
export function replaceTariff(db: Queryable, row: NewTariff): void {
  db.delete(tariff).where(eq(tariff.buildingId, row.buildingId)).run();
  db.insert(tariff).values(row).run();
}

export function deleteTariff(db: Queryable, buildingId: number): void {
  db.delete(tariff).where(eq(tariff.buildingId, buildingId)).run();
}
