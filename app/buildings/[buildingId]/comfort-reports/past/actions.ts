"use server";

import { revalidatePath } from "next/cache";
import { postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { previewPastReports, takePastReports, textOfTable } from "@/lib/services/comfort-reports/import-past";
import { ruleFromForm } from "./form";
import type { PastState } from "./past-state";

/** Reads the table, or takes it in where that button was pressed. The text travels with the form: nothing is kept between. */
export async function pastReportsAction(buildingId: number, _: PastState, form: FormData): Promise<PastState> {
  const { table: typed = "", ...values } = postedValues(form);
  const file = form.get("file");
  const sent = file instanceof File && file.size > 0 ? new Uint8Array(await file.arrayBuffer()) : typed;
  const failed = (formError: string) => ({ table: typed, values, read: null, taken: false, formError });
  if (typeof sent === "string" && sent.trim() === "") return failed("Choose a file, or paste the table.");
  const isTaking = values.step === "take";
  const outcome = await runAction(form, (ctx) => {
    const table = textOfTable(sent);
    const take = isTaking ? takePastReports : previewPastReports;
    return { table, read: take(ctx, buildingId, { file: table, rule: ruleFromForm(values) }) };
  });
  if (!outcome.ok) return failed(outcome.formError);
  const { table, read } = outcome.result;
  const taken = isTaking && read.status === "ok";
  if (taken) revalidatePath(`/buildings/${buildingId}`, "layout");
  return { table, values, read, taken, formError: "" };
}
