"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { registerDevice, reviseDevice } from "@/lib/services/devices/register";
import { deviceInputFromForm } from "./form";
import { sheetAfter } from "./sheet-entries";
import type { SheetState } from "./sheet-state";

export async function registerDeviceAction(buildingId: number, _: SheetState, form: FormData): Promise<SheetState> {
  const shown = shownAgain(form);
  if (shown) return shown;
  const outcome = await runAction(form, (ctx) =>
    registerDevice(ctx, buildingId, deviceInputFromForm(postedValues(form))),
  );
  if (!outcome.ok) return outcome;
  redirect(`/buildings/${buildingId}/devices/${outcome.result}`);
}

export async function reviseDeviceAction(
  buildingId: number,
  deviceId: number,
  _: SheetState,
  form: FormData,
): Promise<SheetState> {
  const shown = shownAgain(form);
  if (shown) return shown;
  const outcome = await runAction(form, (ctx) =>
    reviseDevice(ctx, buildingId, deviceId, deviceInputFromForm(postedValues(form))),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}`, "layout");
  return { ok: true };
}

/** The sheet with a setting more or less, or only its figures: what a button without saving asks for. */
function shownAgain(form: FormData): SheetState {
  const values = postedValues(form);
  const after = sheetAfter(values, values.intent ?? "save");
  return after && { ok: true, values: after };
}
