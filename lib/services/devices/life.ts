import { z } from "zod";
import { type AppTransaction, inTransaction } from "@/db/client";
import { findDevice, insertDeviceEvent, updateDevice } from "@/db/queries/devices";
import { listOpenItems } from "@/db/queries/inspections";
import { DEVICE_STATUSES, type DeviceStatus, isInBuilding, nextStatuses } from "@/lib/electrical/device-status";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { actorName, requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

const stepInput = z.object({
  status: z.enum(DEVICE_STATUSES, "Choose the next step."),
  onDate: z.string().refine((date) => dayNumberFromLocalDate(date) !== null, "Give the day as YYYY-MM-DD."),
  note: z.string().trim().max(500, "Keep the note under 500 characters.").default(""),
});

export type LifeStepInput = z.input<typeof stepInput>;

/**
 * Takes a device one step on in its life. Refused where the step does not follow from where it stands, and where it would
 * approve a device whose inspection has something open that must be put right before use: an approval waives nothing.
 */
export function moveDevice(ctx: Context, buildingId: number, deviceId: number, input: LifeStepInput): void {
  const actor = requireFacilities(ctx);
  const device = findDevice(ctx.db, buildingId, deviceId);
  if (!device) throw new ServiceError("not-found", "This device does not exist.");
  const step = parseInput(stepInput, input);
  if (!nextStatuses(device.status).includes(step.status))
    throw new ServiceError("invalid", `From "${device.status}" a device does not become "${step.status}".`, {
      status: "Choose one of the steps that follow.",
    });
  if (step.onDate < device.foundOn)
    throw new ServiceError("invalid", `It was found on ${device.foundOn}: a step cannot come before that.`, {
      onDate: `Give a day from ${device.foundOn} on.`,
    });
  if (step.status === "approved-to-remain") refuseUnsafe(ctx, deviceId);
  inTransaction(ctx.db, (tx) =>
    writeStep(tx, deviceId, { ...step, enteredBy: actorName(actor), enteredAtMs: ctx.now }),
  );
}

function refuseUnsafe(ctx: Context, deviceId: number): void {
  const open = listOpenItems(ctx.db, deviceId).filter(
    ({ severity }) => severity === "take-out-of-use" || severity === "correct-before-use",
  );
  if (open.length > 0)
    throw new ServiceError(
      "precondition",
      `${open.length === 1 ? "One item" : `${open.length} items`} of its inspection must be put right first: an approval waives no safety item.`,
    );
}

/** Writes a step and what follows from it: removed devices keep no contact and count no longer. */
export function writeStep(
  tx: AppTransaction,
  deviceId: number,
  step: { status: DeviceStatus; onDate: string; note?: string; enteredBy: string; enteredAtMs: number },
): void {
  insertDeviceEvent(tx, { ...step, deviceId });
  const present = isInBuilding(step.status);
  updateDevice(tx, deviceId, {
    status: step.status,
    retiredOn: present ? null : step.onDate,
    updatedAtMs: step.enteredAtMs,
    ...(present ? {} : { ownerContact: "" }),
  });
}
