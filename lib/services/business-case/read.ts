import { listProposalIssues } from "@/db/queries/proposals";
import type { CaseDocument } from "@/lib/business-case/case-document";
import { type CaseFinance, caseFinance } from "@/lib/business-case/case-finance";
import type { CaseInput } from "@/lib/business-case/case-input";
import { composeCase } from "@/lib/business-case/compose-case";
import { caseFromProposal } from "@/lib/business-case/from-proposal/case-from-proposal";
import { financeWorkings } from "@/lib/business-case/sections/finance-workings";
import type { Working } from "@/lib/working/working";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { findProposalOrRefuse } from "../proposals/find";

export type BusinessCase = { issue: number; input: CaseInput; document: CaseDocument };

/** How often a proposal was issued; 0 before it was submitted. */
export function countIssues(ctx: Context, buildingId: number, proposalId: number): number {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  findProposalOrRefuse(ctx, buildingId, proposalId);
  return listProposalIssues(ctx.db, proposalId).length;
}

/**
 * The business case of a proposal's issue (from 1; the newest without a number), from the copy frozen then and from
 * nothing else: assumptions, data and prices of today do not reach it.
 */
export function readBusinessCase(ctx: Context, buildingId: number, proposalId: number, issue?: number): BusinessCase {
  const count = countIssues(ctx, buildingId, proposalId);
  if (count === 0)
    throw new ServiceError(
      "precondition",
      "There is no business case yet: submit the proposal, which freezes its figures.",
    );
  const number = issue ?? count;
  const row = listProposalIssues(ctx.db, proposalId)[count - number];
  if (!row) throw new ServiceError("not-found", `This proposal has no issue ${number}.`);
  const input = caseFromProposal(row.copy, `${proposalId}-${number}`);
  return { issue: number, input, document: composeCase(input) };
}

/** The same with its finance as figures and their workings, for a page. */
export function readBusinessCaseWithFinance(
  ctx: Context,
  buildingId: number,
  proposalId: number,
  issue?: number,
): BusinessCase & { finance: CaseFinance; workings: { title: string; working: Working }[] } {
  const business = readBusinessCase(ctx, buildingId, proposalId, issue);
  const finance = caseFinance(business.input);
  return { ...business, finance, workings: financeWorkings(finance, business.input.building.currency) };
}
