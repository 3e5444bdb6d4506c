"use server";

import { revalidatePath } from "next/cache";
import { numberOf, requiredNumberOf, textOf } from "@/app/_server/form-fields";
import { postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { overrideAssumption, withdrawOverride } from "@/lib/services/assumptions/override";
import { previewOverride } from "@/lib/services/assumptions/preview";
import { shownEffect } from "./effect";
import type { OverrideState } from "./override-state";

export async function overrideAction(
  buildingId: number,
  assumptionId: string,
  _: OverrideState,
  form: FormData,
): Promise<OverrideState> {
  const values = postedValues(form);
  if (values.intent === "preview") return previewed(buildingId, assumptionId, form);
  const outcome = await runAction(form, (ctx) =>
    overrideAssumption(ctx, buildingId, assumptionId, {
      value: requiredNumberOf(values, "value"),
      low: requiredNumberOf(values, "low"),
      high: requiredNumberOf(values, "high"),
      reason: textOf(values, "reason"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}

async function previewed(buildingId: number, assumptionId: string, form: FormData): Promise<OverrideState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    previewOverride(ctx, buildingId, assumptionId, {
      value: requiredNumberOf(values, "value"),
      low: requiredNumberOf(values, "low"),
      high: requiredNumberOf(values, "high"),
    }),
  );
  return outcome.ok ? { ok: true, values, effect: shownEffect(outcome.result) } : outcome;
}

/** Withdraws what the form names in hidden fields. */
export async function withdrawAction(form: FormData): Promise<void> {
  const values = postedValues(form);
  const buildingId = numberOf(values, "buildingId") ?? 0;
  await runAction(form, (ctx) => withdrawOverride(ctx, buildingId, textOf(values, "assumptionId")));
  revalidatePath(`/buildings/${buildingId}`, "layout");
}
