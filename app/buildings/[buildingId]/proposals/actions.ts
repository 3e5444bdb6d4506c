"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { choiceOf, numberOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { decideChange } from "@/lib/services/proposals/changes";
import { confirmVentilation, decideProposal } from "@/lib/services/proposals/decide";
import { planVerification } from "@/lib/services/proposals/plan-verification";
import { draftProposal, reviseProposal } from "@/lib/services/proposals/save";
import { SETPOINT_MOVES } from "@/lib/services/proposals/setpoint-moves";
import { verifyProposal } from "@/lib/services/proposals/verify";
import { fieldErrorsOf, proposalInputFromForm } from "./form";

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
  revalidatePath(`/buildings/${buildingId}/proposals`, "layout");
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
  const outcome = await runAction(form, (ctx) =>
    decideProposal(ctx, buildingId, proposalId, {
      status: choiceOf(values, "status"),
      comment: textOf(values, "comment"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/proposals`, "layout");
  return { ok: true };
}

export async function confirmVentilationAction(
  buildingId: number,
  proposalId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    confirmVentilation(ctx, buildingId, proposalId, {
      engineer: textOf(values, "engineer"),
      onDate: textOf(values, "onDate"),
      note: textOf(values, "note"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/proposals`, "layout");
  return { ok: true };
}

/** Keeps a decision on a move of a setpoint; what moved is read from the trends again. */
export async function decideChangeAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, async (ctx) => {
    const { result } = await readKept(ctx, buildingId, SETPOINT_MOVES);
    return decideChange(ctx, buildingId, result?.moves ?? [], {
      zoneId: numberOf(values, "zoneId") ?? 0,
      setting: choiceOf(values, "setting"),
      atUtcSeconds: numberOf(values, "atUtcSeconds") ?? 0,
      decision: choiceOf(values, "decision"),
      proposalId: numberOf(values, "proposalId"),
      changedBy: textOf(values, "changedBy"),
      reason: textOf(values, "reason"),
    });
  });
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/proposals`, "layout");
  return { ok: true };
}

export async function planVerificationAction(
  buildingId: number,
  proposalId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    planVerification(ctx, buildingId, proposalId, {
      method: choiceOf(values, "method"),
      beforeFrom: textOf(values, "beforeFrom"),
      beforeTo: textOf(values, "beforeTo"),
      afterFrom: textOf(values, "afterFrom"),
      afterTo: textOf(values, "afterTo"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/proposals`, "layout");
  return { ok: true };
}

export async function verifyProposalAction(
  buildingId: number,
  proposalId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => verifyProposal(ctx, buildingId, proposalId));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/proposals`, "layout");
  return { ok: true };
}
