import {
  findProposal,
  listProposalEvents,
  listProposalIssues,
  listProposals,
  listVariants,
  type ProposalEventRow,
  type ProposalIssueRow,
  type ProposalRow,
  type Variant,
} from "@/db/queries/proposals";
import type { ProposalStatus } from "@/lib/proposals/proposal-status";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** A proposal with all that was said of it. `issues` newest first. */
export type Proposal = {
  row: ProposalRow;
  status: ProposalStatus;
  variants: Variant[];
  events: ProposalEventRow[];
  issues: ProposalIssueRow[];
};

export function findProposalOrRefuse(ctx: Context, buildingId: number, id: number): ProposalRow {
  const row = findProposal(ctx.db, id);
  if (!row || row.buildingId !== buildingId) throw new ServiceError("not-found", "This proposal does not exist.");
  return row;
}

export function statusOf(ctx: Context, id: number): ProposalStatus {
  const last = listProposalEvents(ctx.db, id).at(-1);
  if (!last) throw new Error(`proposal ${id} has no event`);
  return last.status;
}

export function readProposal(ctx: Context, buildingId: number, id: number): Proposal {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const row = findProposalOrRefuse(ctx, buildingId, id);
  return {
    row,
    status: statusOf(ctx, id),
    variants: listVariants(ctx.db, id),
    events: listProposalEvents(ctx.db, id),
    issues: listProposalIssues(ctx.db, id),
  };
}

/** Newest first. */
export function readProposals(ctx: Context, buildingId: number): Proposal[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listProposals(ctx.db, buildingId).map((row) => readProposal(ctx, buildingId, row.id));
}
