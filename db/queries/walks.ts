import { and, asc, desc, eq, isNull } from "drizzle-orm";
import type { Queryable } from "../client";
import { branchCircuit } from "../schema/branch-circuit";
import { walk, walkEntry } from "../schema/walk";

export type WalkRow = typeof walk.$inferSelect;
export type WalkEntryRow = typeof walkEntry.$inferSelect;
export type NewWalkEntry = typeof walkEntry.$inferInsert;

export function insertWalk(db: Queryable, row: typeof walk.$inferInsert): WalkRow {
  return db.insert(walk).values(row).returning().get();
}

export function endWalk(db: Queryable, id: number, endedAtMs: number): void {
  db.update(walk).set({ endedAtMs }).where(eq(walk.id, id)).run();
}

export function findWalk(db: Queryable, buildingId: number, id: number): WalkRow | undefined {
  return db
    .select()
    .from(walk)
    .where(and(eq(walk.buildingId, buildingId), eq(walk.id, id)))
    .get();
}

/** The walk that is open, or undefined between two. */
export function findOpenWalk(db: Queryable, buildingId: number): WalkRow | undefined {
  return db
    .select()
    .from(walk)
    .where(and(eq(walk.buildingId, buildingId), isNull(walk.endedAtMs)))
    .orderBy(desc(walk.id))
    .get();
}

/** Walks of a building, the newest first. */
export function listWalks(db: Queryable, buildingId: number): WalkRow[] {
  return db.select().from(walk).where(eq(walk.buildingId, buildingId)).orderBy(desc(walk.startedAtMs)).all();
}

export function insertWalkEntry(db: Queryable, row: NewWalkEntry): WalkEntryRow {
  return db.insert(walkEntry).values(row).returning().get();
}

export function findWalkEntry(db: Queryable, clientId: string): WalkEntryRow | undefined {
  return db.select().from(walkEntry).where(eq(walkEntry.clientId, clientId)).get();
}

/** Entries of a walk as they came. */
export function listWalkEntries(db: Queryable, walkId: number): WalkEntryRow[] {
  return db.select().from(walkEntry).where(eq(walkEntry.walkId, walkId)).orderBy(asc(walkEntry.id)).all();
}

/** Entries of one desk in a walk. */
export function listDeskEntries(db: Queryable, walkId: number, deskId: number): WalkEntryRow[] {
  return db
    .select()
    .from(walkEntry)
    .where(and(eq(walkEntry.walkId, walkId), eq(walkEntry.deskId, deskId)))
    .orderBy(asc(walkEntry.id))
    .all();
}

/** Circuits to choose from, by panel and number. */
export function listCircuitNames(db: Queryable, buildingId: number): { id: number; panel: string; circuit: string }[] {
  return db
    .select({ id: branchCircuit.id, panel: branchCircuit.panel, circuit: branchCircuit.circuit })
    .from(branchCircuit)
    .where(eq(branchCircuit.buildingId, buildingId))
    .orderBy(asc(branchCircuit.panel), asc(branchCircuit.circuit))
    .all();
}
