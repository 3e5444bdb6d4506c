"use server";

import { revalidatePath } from "next/cache";
import { requiredNumberOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { changeReportRetention } from "@/lib/services/comfort-reports/retention";

export async function changeRetentionAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    changeReportRetention(ctx, buildingId, {
      replyAddressDays: requiredNumberOf(values, "replyAddressDays"),
      noteDays: requiredNumberOf(values, "noteDays"),
      deskDays: requiredNumberOf(values, "deskDays"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/comfort-reports`, "layout");
  return { ok: true };
}
