"use server";

import { revalidatePath } from "next/cache";
import type { FormState } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { finishWalk, startWalk } from "@/lib/services/walks/start";

export async function startWalkAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => startWalk(ctx, buildingId));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/walk`);
  return { ok: true };
}

export async function finishWalkAction(
  ids: { buildingId: number; walkId: number },
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => finishWalk(ctx, ids.buildingId, ids.walkId));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${ids.buildingId}/walk`);
  return { ok: true };
}
