"use server";

import { revalidatePath } from "next/cache";
import { textOf } from "@/app/_server/form-fields";
import { type FormState, fieldText, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { saveAction } from "@/app/_server/save-action";
import { addMailRecipient, removeMailRecipient } from "@/lib/services/report-mail/recipients";
import { sendTestMail } from "@/lib/services/report-mail/send-test-mail";
import { endMailServer, setMailServer } from "@/lib/services/report-mail/server";
import { tryMailAgain } from "@/lib/services/report-mail/standing";
import { mailServerFrom, recipientFrom } from "./form";

const pathOf = (buildingId: number): string => `/buildings/${buildingId}/comfort-reports/mail`;

export async function setMailServerAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const input = { ...mailServerFrom(postedValues(form)), password: fieldText(form, "password") };
  return saveAction(form, pathOf(buildingId), (ctx) => setMailServer(ctx, buildingId, input));
}

export async function endMailServerAction(buildingId: number, form: FormData): Promise<void> {
  await runAction(form, (ctx) => endMailServer(ctx, buildingId));
  revalidatePath(pathOf(buildingId));
}

export async function addRecipientAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const input = recipientFrom(postedValues(form));
  return saveAction(form, pathOf(buildingId), (ctx) => addMailRecipient(ctx, buildingId, input));
}

export async function removeRecipientAction(
  { buildingId, recipientId }: { buildingId: number; recipientId: number },
  form: FormData,
): Promise<void> {
  await runAction(form, (ctx) => removeMailRecipient(ctx, buildingId, recipientId));
  revalidatePath(pathOf(buildingId));
}

export async function sendTestMailAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const to = textOf(postedValues(form), "to");
  const outcome = await runAction(form, (ctx) => sendTestMail(ctx, buildingId, { to }));
  return outcome.ok ? { ok: true } : outcome;
}

export async function tryAgainAction(buildingId: number, form: FormData): Promise<void> {
  await runAction(form, (ctx) => tryMailAgain(ctx, buildingId));
  revalidatePath(pathOf(buildingId));
}
