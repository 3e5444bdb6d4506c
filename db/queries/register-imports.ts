import { and, desc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { registerImport } from "../schema/register-import";

export type RegisterImportRow = typeof registerImport.$inferSelect;

export function insertRegisterImport(db: Queryable, row: typeof registerImport.$inferInsert): RegisterImportRow {
  return db.insert(registerImport).values(row).returning().get();
}

export function updateRegisterImport(
  db: Queryable,
  id: number,
  row: Partial<typeof registerImport.$inferInsert>,
): void {
  db.update(registerImport).set(row).where(eq(registerImport.id, id)).run();
}

export function findRegisterImport(db: Queryable, buildingId: number, id: number): RegisterImportRow | undefined {
  return db
    .select()
    .from(registerImport)
    .where(and(eq(registerImport.buildingId, buildingId), eq(registerImport.id, id)))
    .get();
}

/** Registers that came, the newest first. */
export function listRegisterImports(db: Queryable, buildingId: number): RegisterImportRow[] {
  return db
    .select()
    .from(registerImport)
    .where(eq(registerImport.buildingId, buildingId))
    .orderBy(desc(registerImport.receivedAtMs), desc(registerImport.id))
    .all();
}
