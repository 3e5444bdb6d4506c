"use server";

import { revalidatePath } from "next/cache";
import { textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { renameProfile, retireProfile } from "@/lib/services/mapping-profiles/manage";

/** Renames a profile or, by its other button, takes it out of use. */
export async function profileAction(
  place: { buildingId: number; profileId: number },
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    values.step === "retire"
      ? retireProfile(ctx, place.buildingId, place.profileId)
      : renameProfile(ctx, place.buildingId, place.profileId, textOf(values, "name")),
  );
  revalidatePath(`/buildings/${place.buildingId}/imports/profiles`);
  return outcome.ok ? { ok: true } : outcome;
}
