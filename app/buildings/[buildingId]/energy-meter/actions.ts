"use server";

import { revalidatePath } from "next/cache";
import { numberOf } from "@/app/_server/form-fields";
import { postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { removeBill } from "@/lib/services/bills/bills";

/** Takes out the bill that the form names in hidden fields. */
export async function removeBillAction(form: FormData): Promise<void> {
  const values = postedValues(form);
  const buildingId = numberOf(values, "buildingId") ?? 0;
  await runAction(form, (ctx) => removeBill(ctx, buildingId, numberOf(values, "billId") ?? 0));
  revalidatePath(`/buildings/${buildingId}`, "layout");
}
