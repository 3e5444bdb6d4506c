"use server";

import { redirect } from "next/navigation";
import { checkedOf, choiceOf, numberOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";

export async function fileReportAction(token: string, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    fileComfortReport(ctx, token, {
      thermalSensation: numberOf(values, "thermalSensation") ?? Number.NaN,
      preference: choiceOf(values, "preference"),
      heaterInUse: checkedOf(values, "heaterInUse"),
      fanInUse: checkedOf(values, "fanInUse"),
      draught: checkedOf(values, "draught"),
      clothing: textOf(values, "clothing") || null,
      activity: textOf(values, "activity") || null,
      note: textOf(values, "note"),
      submissionId: textOf(values, "submissionId") || null,
    }),
  );
  if (!outcome.ok) return outcome;
  redirect(`/report/${token}/thanks`);
}
