import { z } from "zod";
import { inTransaction } from "@/db/client";
import {
  insertProposalEvent,
  insertProposalIssue,
  listProposalIssues,
  listVariants,
  updateProposal,
} from "@/db/queries/proposals";
import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { NEXT_STATUSES, PROPOSAL_STATUSES, STATUS_WORDS } from "@/lib/proposals/proposal-status";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { findProposalOrRefuse, statusOf } from "./find";
import { freezeProposal } from "./freeze";

const decisionInput = z
  .object({
    status: z.enum(PROPOSAL_STATUSES, "Choose what becomes of the proposal."),
    comment: z.string().trim().max(2000, "Keep the comment under 2,000 characters.").default(""),
  })
  .refine(
    ({ status, comment }) => !["declined", "sent-back", "held", "rolled-back"].includes(status) || comment.length >= 3,
    { path: ["comment"], message: "Say why: the next reader will ask." },
  );

export type DecisionInput = z.input<typeof decisionInput>;

/**
 * Moves a proposal on, with who, when and why. Submitting freezes a copy of inputs, assumptions and results; what is
 * approved is that copy. A lower minimum airflow is not approved before a named engineer has checked the ventilation.
 */
export async function decideProposal(
  ctx: Context,
  buildingId: number,
  id: number,
  input: DecisionInput,
): Promise<void> {
  const by = actorName(requireFacilities(ctx));
  findBuildingOrRefuse(ctx, buildingId);
  const row = findProposalOrRefuse(ctx, buildingId, id);
  const { status, comment } = parseInput(decisionInput, input);
  const present = statusOf(ctx, id);
  if (!NEXT_STATUSES[present].includes(status))
    throw new ServiceError(
      "conflict",
      `The proposal is ${STATUS_WORDS[present]}: it cannot become ${STATUS_WORDS[status]} from there.`,
    );
  if (status === "approved" && row.ventilationEngineer === null && lowersMinimum(ctx, id, row.chosenPosition))
    throw new ServiceError(
      "precondition",
      "This proposal lowers minimum airflows: a named engineer must check the ventilation of those zones, by the code that applies, before it is approved.",
    );
  const copy = status === "submitted" ? await freezeProposal(ctx, buildingId, id) : null;
  inTransaction(ctx.db, (tx) => {
    if (copy) insertProposalIssue(tx, { proposalId: id, copy, issuedBy: by, issuedAtMs: ctx.now });
    insertProposalEvent(tx, { proposalId: id, status, comment, enteredBy: by, enteredAtMs: ctx.now });
  });
}

/** Whether the variant that is proposed lowers a minimum airflow. */
export const lowersMinimum = (ctx: Context, id: number, position: number): boolean =>
  listVariants(ctx.db, id).some(
    (each) => each.position === position && each.levers.some(({ lever }) => lever === "minimum-airflow"),
  );

const checkInput = z.object({
  engineer: z.string().trim().min(3, "Give the engineer's name.").max(120, "Keep the name under 120 characters."),
  onDate: z.string().regex(/^\d{4}-\d{2}-\d{2}$/, "Give the day of the check as YYYY-MM-DD."),
  note: z.string().trim().min(3, "Say by which code and to which rates it was checked.").max(2000),
});

export type VentilationCheckInput = z.input<typeof checkInput>;

/** Keeps a named engineer's check of the ventilation, as long as the proposal is not decided. */
export function confirmVentilation(ctx: Context, buildingId: number, id: number, input: VentilationCheckInput): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  findProposalOrRefuse(ctx, buildingId, id);
  const present = statusOf(ctx, id);
  if (!["draft", "sent-back", "submitted"].includes(present))
    throw new ServiceError("conflict", `The proposal is ${STATUS_WORDS[present]} already.`);
  const { engineer, onDate, note } = parseInput(checkInput, input);
  updateProposal(ctx.db, id, { ventilationEngineer: engineer, ventilationCheckedOn: onDate, ventilationNote: note });
}

/** The newest copy as issued, from which everything of an issued proposal is printed; null before the first. */
export function readIssued(ctx: Context, buildingId: number, id: number): FrozenProposal | null {
  requireFacilities(ctx);
  findProposalOrRefuse(ctx, buildingId, id);
  return listProposalIssues(ctx.db, id)[0]?.copy ?? null;
}
