"use server";

import { revalidatePath } from "next/cache";
import { choiceOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import type { ReportAction, ReportState } from "@/lib/comfort-reports/report-state";
import { takeReportStep } from "@/lib/services/comfort-reports/take-step";
import { momentOfForm } from "../enter/form";

/** Takes a step with a report: state, action, note, answer. */
export async function takeStepAction(
  { buildingId, reportId, timeZone }: { buildingId: number; reportId: number; timeZone: string },
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    takeReportStep(ctx, buildingId, reportId, {
      state: choiceOf<ReportState>(values, "state") || null,
      action: choiceOf<ReportAction>(values, "action") || null,
      actedAtMs: momentOfForm(textOf(values, "actedOn"), "", { timeZone, nowMs: ctx.now }),
      note: textOf(values, "note"),
      answer: textOf(values, "answer"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}
