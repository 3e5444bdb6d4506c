"use server";

import { revalidatePath } from "next/cache";
import { fieldText } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { decideHeldReport } from "@/lib/services/comfort-reports/held";

/** Takes one report in, or drops it; one that is gone already is simply no longer in the list. */
export async function decideHeldAction(buildingId: number, heldId: number, form: FormData): Promise<void> {
  const decision = fieldText(form, "decision");
  if (decision !== "take" && decision !== "drop") return;
  await runAction(form, (ctx) => decideHeldReport(ctx, buildingId, heldId, decision));
  revalidatePath(`/buildings/${buildingId}`, "layout");
}
