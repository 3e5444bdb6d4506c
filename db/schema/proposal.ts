import { sql } from "drizzle-orm";
import { check, index, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { LEVERS } from "@/lib/proposals/lever";
import { PROPOSAL_STATUSES } from "@/lib/proposals/proposal-status";
import type { TrialPlan } from "@/lib/proposals/trial-plan";
import { building } from "./building";
import { zone } from "./zone";

/** A change worked out before it is made. Its status is that of its last event. */
export const proposal = sqliteTable(
  "proposal",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    title: text().notNull(),
    reason: text().notNull().default(""),
    /** 1 to 12, both included; may run over the new year. */
    seasonFromMonth: integer().notNull(),
    seasonToMonth: integer().notNull(),
    /** Minutes of the day by the wall clock. */
    fromMinute: integer().notNull(),
    toMinute: integer().notNull(),
    /** One-off cost, minor units of the building's currency. */
    investmentMinor: integer().notNull().default(0),
    plan: text({ mode: "json" }).$type<TrialPlan>().notNull(),
    /** The variant that is proposed, by its place. */
    chosenPosition: integer().notNull().default(0),
    /** A named engineer's check of the ventilation of zones whose minimum airflow goes down. */
    ventilationEngineer: text(),
    ventilationCheckedOn: text(),
    ventilationNote: text().notNull().default(""),
    createdBy: text().notNull(),
    createdAtMs: integer().notNull(),
  },
  (t) => [
    index("proposal_building").on(t.buildingId, t.id),
    check("proposal_title", sql`length(${t.title}) > 0`),
    check("proposal_season", sql`${t.seasonFromMonth} between 1 and 12 and ${t.seasonToMonth} between 1 and 12`),
    check("proposal_hours", sql`${t.fromMinute} >= 0 and ${t.fromMinute} < ${t.toMinute} and ${t.toMinute} <= 1440`),
    check("proposal_investment", sql`${t.investmentMinor} >= 0`),
    check("proposal_check", sql`(${t.ventilationEngineer} is null) = (${t.ventilationCheckedOn} is null)`),
  ],
);

/** Up to four sets of levers side by side. */
export const proposalVariant = sqliteTable(
  "proposal_variant",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    proposalId: integer()
      .notNull()
      .references(() => proposal.id, { onDelete: "cascade" }),
    position: integer().notNull(),
    name: text().notNull(),
  },
  (t) => [
    uniqueIndex("proposal_variant_position").on(t.proposalId, t.position),
    check("proposal_variant_four", sql`${t.position} between 0 and 3`),
  ],
);

/** A lever of a zone in a variant; `amount` in the unit of the lever. */
export const proposalLever = sqliteTable(
  "proposal_lever",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    variantId: integer()
      .notNull()
      .references(() => proposalVariant.id, { onDelete: "cascade" }),
    zoneId: integer()
      .notNull()
      .references(() => zone.id, { onDelete: "cascade" }),
    lever: text({ enum: LEVERS }).notNull(),
    amount: real().notNull(),
  },
  (t) => [
    uniqueIndex("proposal_lever_once").on(t.variantId, t.zoneId, t.lever),
    check("proposal_lever_amount", sql`${t.amount} between 0 and 100`),
  ],
);

/** A step in a proposal's life. Rows are never changed; the last by id is the status in force. */
export const proposalEvent = sqliteTable(
  "proposal_event",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    proposalId: integer()
      .notNull()
      .references(() => proposal.id, { onDelete: "cascade" }),
    status: text({ enum: PROPOSAL_STATUSES }).notNull(),
    comment: text().notNull().default(""),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
  },
  (t) => [index("proposal_event_proposal").on(t.proposalId, t.id)],
);

/** A proposal as issued, frozen. Rows are never changed: issued again, a newer one stands beside it. */
export const proposalIssue = sqliteTable(
  "proposal_issue",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    proposalId: integer()
      .notNull()
      .references(() => proposal.id, { onDelete: "cascade" }),
    copy: text({ mode: "json" }).$type<FrozenProposal>().notNull(),
    issuedBy: text().notNull(),
    issuedAtMs: integer().notNull(),
  },
  (t) => [index("proposal_issue_proposal").on(t.proposalId, t.id)],
);
