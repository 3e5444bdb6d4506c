"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { choiceOf, numberOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { saveAction } from "@/app/_server/save-action";
import { readBuilding } from "@/lib/services/buildings/find";
import { decideChange } from "@/lib/services/proposals/changes";
import { confirmVentilation, decideProposal } from "@/lib/services/proposals/decide";
import { planVerification } from "@/lib/services/proposals/plan-verification";
import { draftProposal, reviseProposal } from "@/lib/services/proposals/save";
import { verifyProposal } from "@/lib/services/proposals/verify";
import { fieldErrorsOf, proposalInputFromForm } from "./form";

/** What a proposal changes shows on its own pages, and once it is proved on the overview. */
const pagesOf = (buildingId: number): string => `/buildings/${buildingId}`;

/** Writes a new proposal, or the one of the id in place. */
export async function saveProposalAction(
  buildingId: number,
  proposalId: number | null,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => {
    const { temperatureUnit } = readBuilding(ctx, buildingId);
    const input = proposalInputFromForm(postedValues(form), temperatureUnit);
    if (proposalId === null) return draftProposal(ctx, buildingId, input);
    reviseProposal(ctx, buildingId, proposalId, input);
    return proposalId;
  });
  if (!outcome.ok) return { ...outcome, fieldErrors: fieldErrorsOf(outcome.fieldErrors, postedValues(form)) };
  revalidatePath(pagesOf(buildingId), "layout");
  if (proposalId === null) redirect(`/buildings/${buildingId}/proposals/${outcome.result}`);
  return { ok: true };
}

export async function decideProposalAction(
  buildingId: number,
  proposalId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  return saveAction(form, pagesOf(buildingId), (ctx) =>
    decideProposal(ctx, buildingId, proposalId, {
      status: choiceOf(values, "status"),
      comment: textOf(values, "comment"),
    }),
  );
}

export async function confirmVentilationAction(
  buildingId: number,
  proposalId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  return saveAction(form, pagesOf(buildingId), (ctx) =>
    confirmVentilation(ctx, buildingId, proposalId, {
      engineer: textOf(values, "engineer"),
      onDate: textOf(values, "onDate"),
      note: textOf(values, "note"),
    }),
  );
}

/** Keeps a decision on a move of a setpoint; what moved is read from the trends again. */
export async function decideChangeAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  return saveAction(form, pagesOf(buildingId), (ctx) =>
    decideChange(ctx, buildingId, {
      zoneId: numberOf(values, "zoneId") ?? 0,
      setting: choiceOf(values, "setting"),
      atUtcSeconds: numberOf(values, "atUtcSeconds") ?? 0,
      decision: choiceOf(values, "decision"),
      proposalId: numberOf(values, "proposalId"),
      changedBy: textOf(values, "changedBy"),
      reason: textOf(values, "reason"),
    }),
  );
}

export async function planVerificationAction(
  buildingId: number,
  proposalId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  return saveAction(form, pagesOf(buildingId), (ctx) =>
    planVerification(ctx, buildingId, proposalId, {
      method: choiceOf(values, "method"),
      beforeFrom: textOf(values, "beforeFrom"),
      beforeTo: textOf(values, "beforeTo"),
      afterFrom: textOf(values, "afterFrom"),
      afterTo: textOf(values, "afterTo"),
    }),
  );
}

export async function verifyProposalAction(
  buildingId: number,
  proposalId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  return saveAction(form, pagesOf(buildingId), (ctx) => verifyProposal(ctx, buildingId, proposalId));
}
