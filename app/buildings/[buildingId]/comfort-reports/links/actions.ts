"use server";

import { revalidatePath } from "next/cache";
import { numberOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { endComfortLink, issueComfortLink } from "@/lib/services/comfort-links/manage";

export async function issueLinkAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const place = { zoneId: numberOf(values, "zoneId") ?? 0, deskId: numberOf(values, "deskId") };
  const outcome = await runAction(form, (ctx) => issueComfortLink(ctx, buildingId, place));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/comfort-reports/links`);
  return { ok: true };
}

/** Ends the link that the form names in hidden fields. */
export async function endLinkAction(form: FormData): Promise<void> {
  const values = postedValues(form);
  const buildingId = numberOf(values, "buildingId") ?? 0;
  await runAction(form, (ctx) => endComfortLink(ctx, buildingId, numberOf(values, "linkId") ?? 0));
  revalidatePath(`/buildings/${buildingId}/comfort-reports/links`);
}
