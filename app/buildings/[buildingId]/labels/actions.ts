"use server";

import { revalidatePath } from "next/cache";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { makeMissingLinks } from "@/lib/services/labels/read";
import { choiceOfQuery } from "./choice";

/** Makes the links that the chosen labels lack. */
export async function makeLinksAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const { choice } = choiceOfQuery(postedValues(form));
  const outcome = await runAction(form, (ctx) => makeMissingLinks(ctx, buildingId, choice));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/labels`);
  return { ok: true };
}
