"use server";

import { revalidatePath } from "next/cache";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { reviseBuilding } from "@/lib/services/buildings/save";
import { buildingInputFromForm } from "../../form";

export async function reviseBuildingAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) =>
    reviseBuilding(ctx, buildingId, buildingInputFromForm(postedValues(form))),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}
