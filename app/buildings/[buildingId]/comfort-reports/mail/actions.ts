"use server";

import { revalidatePath } from "next/cache";
import { textOf } from "@/app/_server/form-fields";
import { type FormState, fieldText, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { addMailRecipient, removeMailRecipient } from "@/lib/services/report-mail/recipients";
import { sendTestMail } from "@/lib/services/report-mail/send-test-mail";
import { endMailServer, setMailServer } from "@/lib/services/report-mail/server";
import { tryMailAgain } from "@/lib/services/report-mail/standing";
import { mailServerFrom, recipientFrom } from "./form";

const pathOf = (buildingId: number): string => `/buildings/${buildingId}/comfort-reports/mail`;

export async function setMailServerAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const input = { ...mailServerFrom(postedValues(form)), password: fieldText(form, "password") };
  const outcome = await runAction(form, (ctx) => setMailServer(ctx, buildingId, input));
  if (!outcome.ok) return outcome;
  revalidatePath(pathOf(buildingId));
  return { ok: true };
}

export async function endMailServerAction(buildingId: number, form: FormData): Promise<void> {
  await runAction(form, (ctx) => endMailServer(ctx, buildingId));
  revalidatePath(pathOf(buildingId));
}

export async function addRecipientAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => addMailRecipient(ctx, buildingId, recipientFrom(postedValues(form))));
  if (!outcome.ok) return outcome;
  revalidatePath(pathOf(buildingId));
  return { ok: true };
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
