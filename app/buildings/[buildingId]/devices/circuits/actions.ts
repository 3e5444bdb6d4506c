"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { numberOf, textOf } from "@/app/_server/form-fields";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { runAction } from "@/app/_server/run-action";
import { addCircuit, hookUpByLabel, hookUpDevice, removeCircuit, reviseCircuit } from "@/lib/services/circuits/save";
import { circuitFromForm, hookUpFromForm } from "./form";

export async function addCircuitAction(buildingId: number, _: FormState, form: FormData): Promise<FormState> {
  const outcome = await runAction(form, (ctx) => addCircuit(ctx, buildingId, circuitFromForm(postedValues(form))));
  if (!outcome.ok) return outcome;
  redirect(`/buildings/${buildingId}/devices/circuits/${outcome.result}`);
}

export async function reviseCircuitAction(
  buildingId: number,
  circuitId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const outcome = await runAction(form, (ctx) =>
    reviseCircuit(ctx, buildingId, circuitId, circuitFromForm(postedValues(form))),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/devices`, "layout");
  return { ok: true };
}

/** Takes the circuit that the form names off the register. */
export async function removeCircuitAction(form: FormData): Promise<void> {
  const values = postedValues(form);
  const buildingId = numberOf(values, "buildingId") ?? 0;
  const outcome = await runAction(form, (ctx) => removeCircuit(ctx, buildingId, numberOf(values, "circuitId") ?? 0));
  if (outcome.ok) redirect(`/buildings/${buildingId}/devices/circuits`);
}

/** Hangs the device of a label on a circuit. */
export async function hookUpByLabelAction(
  buildingId: number,
  circuitId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    hookUpByLabel(ctx, buildingId, textOf(values, "deviceLabel"), hookUpFromForm(values, circuitId)),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/devices`, "layout");
  return { ok: true };
}

/** Says of a device on which circuit it hangs. */
export async function hookUpDeviceAction(
  buildingId: number,
  deviceId: number,
  _: FormState,
  form: FormData,
): Promise<FormState> {
  const values = postedValues(form);
  const outcome = await runAction(form, (ctx) =>
    hookUpDevice(ctx, buildingId, deviceId, hookUpFromForm(values, numberOf(values, "circuitId"))),
  );
  if (!outcome.ok) return outcome;
  revalidatePath(`/buildings/${buildingId}/devices`, "layout");
  return { ok: true };
}
