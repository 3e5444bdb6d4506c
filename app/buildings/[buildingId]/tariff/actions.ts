"use server";

import { revalidatePath } from "next/cache";
import { numberOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { removeTariff, saveTariff } from "@/lib/services/tariffs/save";
import { tariffInputFromForm } from "./form";

export async function saveTariffAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => saveTariff(ctx, buildingId, tariffInputFromForm(postedValues(form))));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}

/** Takes away the tariff of the building that the form names in a hidden field. */
export async function removeTariffAction(form: FormData): Promise<void> {
  const buildingId = numberOf(postedValues(form), "buildingId") ?? 0;
  await runAction(form, (ctx) => removeTariff(ctx, buildingId));
  revalidatePath(`/buildings/${buildingId}`, "layout");
}
