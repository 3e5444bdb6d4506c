import { and, eq, isNotNull, isNull } from "drizzle-orm";
import { naturalCompare } from "@/lib/order/natural-compare";
import type { Queryable } from "../client";
import { branchCircuit } from "../schema/branch-circuit";
import { device } from "../schema/device";

export type BranchCircuitRow = typeof branchCircuit.$inferSelect;
export type NewBranchCircuit = typeof branchCircuit.$inferInsert;

export function insertBranchCircuit(db: Queryable, row: NewBranchCircuit): BranchCircuitRow {
  return db.insert(branchCircuit).values(row).returning().get();
}

export function updateBranchCircuit(db: Queryable, id: number, row: Partial<NewBranchCircuit>): void {
  db.update(branchCircuit).set(row).where(eq(branchCircuit.id, id)).run();
}

/** Takes a circuit off the register; what hung on it hangs on none that is known. */
export function deleteBranchCircuit(db: Queryable, id: number): void {
  db.update(device).set({ circuitId: null }).where(eq(device.circuitId, id)).run();
  db.delete(branchCircuit).where(eq(branchCircuit.id, id)).run();
}

export function findBranchCircuit(db: Queryable, buildingId: number, id: number): BranchCircuitRow | undefined {
  return db
    .select()
    .from(branchCircuit)
    .where(and(eq(branchCircuit.buildingId, buildingId), eq(branchCircuit.id, id)))
    .get();
}

export function findBranchCircuitByName(
  db: Queryable,
  buildingId: number,
  panel: string,
  circuit: string,
): BranchCircuitRow | undefined {
  return db
    .select()
    .from(branchCircuit)
    .where(
      and(eq(branchCircuit.buildingId, buildingId), eq(branchCircuit.panel, panel), eq(branchCircuit.circuit, circuit)),
    )
    .get();
}

/** Circuits of a building by panel and number. */
export function listBranchCircuits(db: Queryable, buildingId: number): BranchCircuitRow[] {
  return db
    .select()
    .from(branchCircuit)
    .where(eq(branchCircuit.buildingId, buildingId))
    .all()
    .sort((a, b) => naturalCompare(a.panel, b.panel) || naturalCompare(a.circuit, b.circuit));
}

/** Ids of devices in the building that hang on a circuit, by circuit. */
export function deviceIdsByCircuit(db: Queryable, buildingId: number): Map<number, number[]> {
  const rows = db
    .select({ id: device.id, circuitId: device.circuitId })
    .from(device)
    .where(and(eq(device.buildingId, buildingId), isNull(device.retiredOn), isNotNull(device.circuitId)))
    .all();
  const found = new Map<number, number[]>();
  for (const { id, circuitId } of rows)
    if (circuitId !== null) found.set(circuitId, [...(found.get(circuitId) ?? []), id]);
  return found;
}
