"use server";

import { revalidatePath } from "next/cache";
import { checkedOf, choiceOf, numberOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
import { momentOfForm } from "./form";

export async function enterReportAction(
  buildingId: number,
  timeZone: string,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    logComfortReport(ctx, buildingId, {
      origin: choiceOf(values, "origin"),
      zoneCode: textOf(values, "zoneCode"),
      deskCode: textOf(values, "deskCode"),
      reportedAtMs: momentOfForm(textOf(values, "date"), textOf(values, "time"), { timeZone, nowMs: ctx.now }),
      thermalSensation: numberOf(values, "thermalSensation") ?? Number.NaN,
      preference: choiceOf(values, "preference"),
      draught: checkedOf(values, "draught"),
      note: textOf(values, "note"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}
