"use server";

import { revalidatePath } from "next/cache";
import { postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { decodeText } from "@/lib/importers/tables/decode-text";
import { previewPastReports, takePastReports } from "@/lib/services/comfort-reports/import-past";
import { ruleFromForm } from "./form";
import type { PastState } from "./past-state";

/** Reads the table, or takes it in where that button was pressed. The text travels with the form: nothing is kept between. */
export async function pastReportsAction(buildingId: number, _: PastState, form: FormData): Promise<PastState> {
  const { table: sent = "", ...values } = postedValues(form);
  const file = form.get("file");
  const decoded = file instanceof File && file.size > 0 ? decodeText(new Uint8Array(await file.arrayBuffer())) : null;
  const table = decoded?.status === "ok" ? decoded.text : sent;
  const failed = (formError: string) => ({ table, values, read: null, taken: false, formError });
  if (decoded?.status === "not-text") return failed(decoded.message);
  if (table.trim() === "") return failed("Choose a file, or paste the table.");
  const isTaking = values.step === "take";
  const take = isTaking ? takePastReports : previewPastReports;
  const outcome = await runAction(form, (ctx) => take(ctx, buildingId, table, ruleFromForm(values)));
  if (!outcome.ok) return failed(outcome.formError);
  const taken = isTaking && outcome.result.status === "ok";
  if (taken) revalidatePath(`/buildings/${buildingId}`, "layout");
  return { table, values, read: outcome.result, taken, formError: "" };
}
