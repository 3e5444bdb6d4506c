"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { checkedOf, choiceOf, numberOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { noteControl, removeControl } from "@/lib/services/devices/controls";
import { moveDevice } from "@/lib/services/devices/life";
import { correctItem, recordInspection } from "@/lib/services/inspections/record";
import { inspectionFromForm } from "./inspection-entries";

export async function moveDeviceAction(
  buildingId: number,
  deviceId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    moveDevice(ctx, buildingId, deviceId, {
      status: choiceOf(values, "status"),
      onDate: textOf(values, "onDate"),
      note: textOf(values, "stepNote"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}

export async function recordInspectionAction(
  buildingId: number,
  deviceId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const outcome = await runAction(form, (ctx) =>
    recordInspection(ctx, buildingId, deviceId, inspectionFromForm(postedValues(form))),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  redirect(`/buildings/${buildingId}/devices/${deviceId}#inspection`);
}

export async function correctItemAction(
  buildingId: number,
  deviceId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    correctItem(ctx, buildingId, deviceId, numberOf(values, "itemRowId") ?? 0, {
      correctedOn: textOf(values, "correctedOn"),
      correctionNote: textOf(values, "correctionNote"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/devices`, "layout");
  return { ok: true };
}

export async function noteControlAction(
  buildingId: number,
  deviceId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    noteControl(ctx, buildingId, deviceId, {
      name: textOf(values, "name"),
      lowEndW: numberOf(values, "lowEndW"),
      highEndW: numberOf(values, "highEndW"),
      changesSpeed: checkedOf(values, "changesSpeed"),
      note: textOf(values, "controlNote"),
    }),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/devices`, "layout");
  return { ok: true };
}

/** Takes back what was noted of a control that the form names. */
export async function removeControlAction(form: FormData): Promise<void> {
  const values = postedValues(form);
  const number = (name: string): number => numberOf(values, name) ?? 0;
  await runAction(form, (ctx) => removeControl(ctx, number("buildingId"), number("deviceId"), number("controlId")));
  revalidatePath(`/buildings/${number("buildingId")}/devices`, "layout");
}
