"use server";

import { revalidatePath } from "next/cache";
import { textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { endReportWebhook, setReportWebhook } from "@/lib/services/comfort-reports/webhook";

const pathOf = (buildingId: number): string => `/buildings/${buildingId}/comfort-reports/webhook`;

export async function setWebhookAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const url = textOf(postedValues(form), "url");
  const outcome = await runAction(form, (ctx) => setReportWebhook(ctx, buildingId, { url }));
  if (!outcome.ok) return outcome;
  revalidatePath(pathOf(buildingId));
  return { ok: true };
}

export async function endWebhookAction(buildingId: number, form: FormData): Promise<void> {
  await runAction(form, (ctx) => endReportWebhook(ctx, buildingId));
  revalidatePath(pathOf(buildingId));
}
