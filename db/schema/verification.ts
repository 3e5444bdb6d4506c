import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { VERDICTS, VERIFICATION_METHODS } from "@/lib/proposals/verification-plan";
import type { VerificationResult } from "@/lib/proposals/verification-result";
import { proposal } from "./proposal";

/** How a proposal will be proved, set before the wait begins. */
export const verificationPlan = sqliteTable(
  "verification_plan",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    proposalId: integer()
      .notNull()
      .references(() => proposal.id, { onDelete: "cascade" }),
    method: text({ enum: VERIFICATION_METHODS }).notNull(),
    /** `YYYY-MM-DD` of the building's calendar, both included. */
    beforeFrom: text().notNull(),
    beforeTo: text().notNull(),
    afterFrom: text().notNull(),
    afterTo: text().notNull(),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
  },
  (t) => [
    uniqueIndex("verification_plan_proposal").on(t.proposalId),
    check(
      "verification_plan_windows",
      sql`${t.beforeFrom} <= ${t.beforeTo} and ${t.afterFrom} <= ${t.afterTo} and ${t.beforeTo} < ${t.afterFrom}`,
    ),
  ],
);

/** What a verification found when it was worked out. Rows are never changed. */
export const verificationResult = sqliteTable(
  "verification_result",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    proposalId: integer()
      .notNull()
      .references(() => proposal.id, { onDelete: "cascade" }),
    verdict: text({ enum: VERDICTS }).notNull(),
    result: text({ mode: "json" }).$type<VerificationResult>().notNull(),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
  },
  (t) => [index("verification_result_proposal").on(t.proposalId, t.id)],
);
