"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { changeRegisterMapping } from "@/lib/services/registers/mapping";
import { takeRegister } from "@/lib/services/registers/take";
import { mappingFromForm } from "./form";

type Ids = { buildingId: number; importId: number };

export async function changeMappingAction(ids: Ids, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) =>
    changeRegisterMapping(ctx, ids.buildingId, ids.importId, mappingFromForm(postedValues(form))),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${ids.buildingId}/devices/bring-in/${ids.importId}`);
  return { ok: true };
}

/** Takes the rows and leads to the import with the fate of each. */
export async function takeRegisterAction(ids: Ids, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => takeRegister(ctx, ids.buildingId, ids.importId));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${ids.buildingId}`, "layout");
  redirect(`/buildings/${ids.buildingId}/imports/${outcome.result.id}`);
}
