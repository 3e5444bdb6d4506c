"use server";

import { revalidatePath } from "next/cache";
import { choiceOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { addDesk } from "@/lib/services/desks/save";
import { noteVerdict } from "@/lib/services/zone-verdicts/note";
import { addZone, reviseZone } from "@/lib/services/zones/save";
import { type ZoneUnits, zoneInputFromForm } from "./form";

export async function addZoneAction(
  buildingId: number,
  units: ZoneUnits,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const outcome = await runAction(form, (ctx) =>
    addZone(ctx, buildingId, zoneInputFromForm(postedValues(form), units)),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}

export async function reviseZoneAction(
  buildingId: number,
  zoneId: number,
  units: ZoneUnits,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const outcome = await runAction(form, (ctx) =>
    reviseZone(ctx, buildingId, zoneId, zoneInputFromForm(postedValues(form), units)),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}

/** Keeps what someone says of a zone's verdict; the verdict that was on the page comes along. */
export async function noteVerdictAction(
  buildingId: number,
  zoneId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    noteVerdict(ctx, buildingId, zoneId, {
      stance: choiceOf(values, "stance"),
      note: textOf(values, "note"),
      verdictSeen: textOf(values, "verdictSeen"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/zones/${zoneId}`);
  return { ok: true };
}

export async function addDeskAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    addDesk(ctx, buildingId, { code: textOf(values, "deskCode"), zoneCode: textOf(values, "zoneCode") }),
  );
  if (!outcome.ok) {
    const { code, ...others } = outcome.fieldErrors;
    return { ...outcome, fieldErrors: code ? { ...others, deskCode: code } : others };
  }
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}
