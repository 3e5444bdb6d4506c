import { asc, desc, eq, inArray } from "drizzle-orm";
import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import type { ZoneLever } from "@/lib/proposals/lever";
import type { Queryable } from "../client";
import { proposal, proposalEvent, proposalIssue, proposalLever, proposalVariant } from "../schema/proposal";

export type ProposalRow = typeof proposal.$inferSelect;
export type NewProposal = typeof proposal.$inferInsert;
export type ProposalEventRow = typeof proposalEvent.$inferSelect;
export type ProposalIssueRow = typeof proposalIssue.$inferSelect;

/** A variant with its levers in the order of their entry. */
export type Variant = { id: number; position: number; name: string; levers: ZoneLever[] };

export function insertProposal(db: Queryable, row: NewProposal): ProposalRow {
  return db.insert(proposal).values(row).returning().get();
}

export function updateProposal(db: Queryable, id: number, changes: Partial<NewProposal>): void {
  db.update(proposal).set(changes).where(eq(proposal.id, id)).run();
}

export const findProposal = (db: Queryable, id: number): ProposalRow | undefined =>
  db.select().from(proposal).where(eq(proposal.id, id)).get();

/** Newest first. */
export const listProposals = (db: Queryable, buildingId: number): ProposalRow[] =>
  db.select().from(proposal).where(eq(proposal.buildingId, buildingId)).orderBy(desc(proposal.id)).all();

/** Puts variants and their levers in the place of those that are there. */
export function replaceVariants(db: Queryable, proposalId: number, variants: readonly Omit<Variant, "id">[]): void {
  db.delete(proposalVariant).where(eq(proposalVariant.proposalId, proposalId)).run();
  for (const { position, name, levers } of variants) {
    const { id } = db.insert(proposalVariant).values({ proposalId, position, name }).returning().get();
    if (levers.length === 0) continue;
    db.insert(proposalLever)
      .values(levers.map(({ zoneId, lever, amount }) => ({ variantId: id, zoneId, lever, amount })))
      .run();
  }
}

/** Variants of a proposal by their place, with their levers. */
export function listVariants(db: Queryable, proposalId: number): Variant[] {
  const variants = db
    .select()
    .from(proposalVariant)
    .where(eq(proposalVariant.proposalId, proposalId))
    .orderBy(asc(proposalVariant.position))
    .all();
  const levers =
    variants.length === 0
      ? []
      : leversOf(
          db,
          variants.map((each) => each.id),
        );
  return variants.map(({ id, position, name }) => ({
    id,
    position,
    name,
    levers: levers
      .filter((each) => each.variantId === id)
      .map(({ zoneId, lever, amount }) => ({ zoneId, lever, amount })),
  }));
}

const leversOf = (db: Queryable, variantIds: number[]) =>
  db
    .select()
    .from(proposalLever)
    .where(inArray(proposalLever.variantId, variantIds))
    .orderBy(asc(proposalLever.id))
    .all();

export function insertProposalEvent(db: Queryable, row: typeof proposalEvent.$inferInsert): void {
  db.insert(proposalEvent).values(row).run();
}

/** Oldest first; the last is the status in force. */
export const listProposalEvents = (db: Queryable, proposalId: number): ProposalEventRow[] =>
  db.select().from(proposalEvent).where(eq(proposalEvent.proposalId, proposalId)).orderBy(asc(proposalEvent.id)).all();

export function insertProposalIssue(
  db: Queryable,
  row: { proposalId: number; copy: FrozenProposal; issuedBy: string; issuedAtMs: number },
): number {
  return db.insert(proposalIssue).values(row).returning({ id: proposalIssue.id }).get().id;
}

/** Newest first. */
export const listProposalIssues = (db: Queryable, proposalId: number): ProposalIssueRow[] =>
  db.select().from(proposalIssue).where(eq(proposalIssue.proposalId, proposalId)).orderBy(desc(proposalIssue.id)).all();
