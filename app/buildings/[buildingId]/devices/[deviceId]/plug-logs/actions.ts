"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { requiredNumberOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { changePlugLogRawDays } from "@/lib/services/plug-logs/raw-readings";
import { removePlugLog, reviewPlugLog, setPlugLogSeason } from "@/lib/services/plug-logs/review";

export async function changeRawDaysAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const plugLogRawDays = requiredNumberOf(postedValues(form), "plugLogRawDays");
  const outcome = await runAction(form, (ctx) => changePlugLogRawDays(ctx, buildingId, { plugLogRawDays }));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/devices`, "layout");
  return { ok: true };
}

type LogIds = { buildingId: number; deviceId: number; logId: number };

export async function setSeasonAction(ids: LogIds, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const input = { standsFrom: textOf(values, "standsFrom"), standsTo: textOf(values, "standsTo") };
  const outcome = await runAction(form, (ctx) => setPlugLogSeason(ctx, ids.buildingId, ids.deviceId, ids.logId, input));
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${ids.buildingId}/devices/${ids.deviceId}/plug-logs`, "layout");
  return { ok: true };
}

/** Reviews a log; the button says whether its hours go into the register. */
export async function reviewAction(ids: LogIds, _: FormState, form: FormData): Promise<FormState> {
  const takeOver = textOf(postedValues(form), "review") === "take-over";
  const outcome = await runAction(form, (ctx) =>
    reviewPlugLog(ctx, ids.buildingId, ids.deviceId, ids.logId, { takeOver }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${ids.buildingId}`, "layout");
  return { ok: true };
}

export async function removeAction(ids: LogIds, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => removePlugLog(ctx, ids.buildingId, ids.deviceId, ids.logId));
  if (!outcome.ok) return outcome;
  redirect(`/buildings/${ids.buildingId}/devices/${ids.deviceId}/plug-logs`);
}
