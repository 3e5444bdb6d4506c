import { desc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { verdictNote } from "../schema/verdict-note";

export type VerdictNoteRow = typeof verdictNote.$inferSelect;
export type NewVerdictNote = typeof verdictNote.$inferInsert;

export function insertVerdictNote(db: Queryable, row: NewVerdictNote): VerdictNoteRow {
  return db.insert(verdictNote).values(row).returning().get();
}

/** Everything that was ever said of a zone's verdict, newest first. */
export function listVerdictNotes(db: Queryable, zoneId: number): VerdictNoteRow[] {
  return db
    .select()
    .from(verdictNote)
    .where(eq(verdictNote.zoneId, zoneId))
    .orderBy(desc(verdictNote.enteredAtMs), desc(verdictNote.id))
    .all();
}
