import { desc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { verificationPlan, verificationResult } from "../schema/verification";

export type VerificationPlanRow = typeof verificationPlan.$inferSelect;
export type VerificationResultRow = typeof verificationResult.$inferSelect;

export const findVerificationPlan = (db: Queryable, proposalId: number): VerificationPlanRow | undefined =>
  db.select().from(verificationPlan).where(eq(verificationPlan.proposalId, proposalId)).get();

/** Puts a plan in the place of the one that is there. */
export function saveVerificationPlan(db: Queryable, row: typeof verificationPlan.$inferInsert): void {
  db.delete(verificationPlan).where(eq(verificationPlan.proposalId, row.proposalId)).run();
  db.insert(verificationPlan).values(row).run();
}

export function insertVerificationResult(db: Queryable, row: typeof verificationResult.$inferInsert): void {
  db.insert(verificationResult).values(row).run();
}

/** Newest first. */
export const listVerificationResults = (db: Queryable, proposalId: number): VerificationResultRow[] =>
  db
    .select()
    .from(verificationResult)
    .where(eq(verificationResult.proposalId, proposalId))
    .orderBy(desc(verificationResult.id))
    .all();
