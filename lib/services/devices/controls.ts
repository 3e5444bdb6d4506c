import { z } from "zod";
import { deleteDeviceControl, insertDeviceControl } from "@/db/queries/device-controls";
import { findDevice } from "@/db/queries/devices";
import { controlEvidence } from "@/lib/electrical/control-evidence";
import { withinFault } from "@/lib/electrical/entry-range";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

const watts = (where: string) =>
  z
    .union([z.number(), z.nan()])
    .nullable()
    .transform((value, refinement) => {
      const range = { what: `The power at the ${where} end`, example: "33.5", low: 0, high: 5000, unit: "W" };
      const message =
        value === null
          ? `Type the watts at the ${where} end: without them it is not measured.`
          : withinFault(value, range);
      if (message) refinement.addIssue({ code: "custom", message });
      return value ?? 0;
    });

const controlInput = z.object({
  name: z.string().trim().min(1, "Name the control, such as its dial.").max(40, "Keep the name under 40 characters."),
  lowEndW: watts("low"),
  highEndW: watts("high"),
  changesSpeed: z.boolean().default(false),
  note: z.string().trim().max(200, "Keep the note under 200 characters.").default(""),
});

export type ControlInput = z.input<typeof controlInput>;

/** Keeps what a control changes, as its two readings say: "this dial changes nothing" is a finding, not an opinion. */
export function noteControl(ctx: Context, buildingId: number, deviceId: number, input: ControlInput): void {
  requireFacilities(ctx);
  if (!findDevice(ctx.db, buildingId, deviceId)) throw new ServiceError("not-found", "This device does not exist.");
  const { changesSpeed, ...row } = parseInput(controlInput, input);
  const { effect } = controlEvidence({ ...row, changesSpeed });
  insertDeviceControl(ctx.db, { ...row, deviceId, effect });
}

export function removeControl(ctx: Context, buildingId: number, deviceId: number, controlId: number): void {
  requireFacilities(ctx);
  if (!findDevice(ctx.db, buildingId, deviceId)) throw new ServiceError("not-found", "This device does not exist.");
  deleteDeviceControl(ctx.db, deviceId, controlId);
}
