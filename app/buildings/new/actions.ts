"use server";

import { redirect } from "next/navigation";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { createBuilding } from "@/lib/services/buildings/save";
import { buildingInputFromForm } from "../form";

export async function createBuildingAction(_: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => createBuilding(ctx, buildingInputFromForm(postedValues(form))));
  if (!outcome.ok) return outcome;
  redirect(`/buildings/${outcome.result}/imports`);
}
