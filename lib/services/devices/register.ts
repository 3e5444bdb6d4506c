import { inTransaction } from "@/db/client";
import { findDevice, findDeviceByLabel, insertDevice, replaceSettings, updateDevice } from "@/db/queries/devices";
import { findDeskByCode, findZoneByCode } from "@/db/queries/zones";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { type DeviceInput, deviceInput } from "./device-input";
import { writeStep } from "./life";

/** Enters a heater or fan in the register. Returns its id. */
export function registerDevice(ctx: Context, buildingId: number, input: DeviceInput): number {
  const enteredBy = actorName(requireFacilities(ctx));
  findBuildingOrRefuse(ctx, buildingId);
  const { settings, ...row } = placed(ctx, buildingId, input, null);
  return inTransaction(ctx.db, (tx) => {
    const { id } = insertDevice(tx, { ...row, buildingId, createdAtMs: ctx.now, updatedAtMs: ctx.now });
    replaceSettings(tx, id, settings);
    writeStep(tx, id, { status: "found", onDate: row.foundOn, enteredBy, enteredAtMs: ctx.now });
    return id;
  });
}

/** Changes a device and its measurement sheet. */
export function reviseDevice(ctx: Context, buildingId: number, deviceId: number, input: DeviceInput): void {
  requireFacilities(ctx);
  if (!findDevice(ctx.db, buildingId, deviceId)) throw new ServiceError("not-found", "This device does not exist.");
  const { settings, ...row } = placed(ctx, buildingId, input, deviceId);
  inTransaction(ctx.db, (tx) => {
    updateDevice(tx, deviceId, { ...row, updatedAtMs: ctx.now });
    replaceSettings(tx, deviceId, settings);
  });
}

/** Takes a device out of use from a day on (null puts it back); it stays on record and no longer counts. */
export function retireDevice(ctx: Context, buildingId: number, deviceId: number, retiredOn: string | null): void {
  const enteredBy = actorName(requireFacilities(ctx));
  const device = findDevice(ctx.db, buildingId, deviceId);
  if (!device) throw new ServiceError("not-found", "This device does not exist.");
  if (retiredOn !== null && dayNumberFromLocalDate(retiredOn) === null)
    throw new ServiceError("invalid", "Give the day it went as YYYY-MM-DD.", { retiredOn: "Give a date." });
  if ((device.retiredOn === null) === (retiredOn === null)) return;
  const step =
    retiredOn === null
      ? { status: "returned" as const, onDate: device.retiredOn ?? device.foundOn }
      : { status: "removed" as const, onDate: retiredOn };
  inTransaction(ctx.db, (tx) => writeStep(tx, deviceId, { ...step, enteredBy, enteredAtMs: ctx.now }));
}

/** The parsed device with its zone and desk found; refuses places that do not exist and labels that are taken. */
function placed(ctx: Context, buildingId: number, input: DeviceInput, ownId: number | null) {
  const { zoneCode, deskCode, ...values } = parseInput(deviceInput, input);
  const fieldErrors: Record<string, string> = {};
  const zone = findZoneByCode(ctx.db, buildingId, zoneCode);
  if (!zone) fieldErrors.zoneCode = `There is no zone ${zoneCode} in this building: add it first, or correct the code.`;
  const desk = deskCode ? findDeskByCode(ctx.db, buildingId, deskCode) : undefined;
  if (deskCode && !desk)
    fieldErrors.deskCode = `There is no desk ${deskCode} in this building: add it first, or correct the code.`;
  else if (desk && zone && desk.zoneId !== zone.id)
    fieldErrors.deskCode = `Desk ${deskCode} does not stand in zone ${zoneCode}.`;
  const other = findDeviceByLabel(ctx.db, buildingId, values.label);
  if (other && other.id !== ownId)
    fieldErrors.label = `A device labelled ${values.label} is already on the register: give this one another label.`;
  const [first] = Object.values(fieldErrors);
  if (!zone || first) throw new ServiceError("invalid", first ?? "Choose a zone.", fieldErrors);
  return { ...values, zoneId: zone.id, deskId: desk?.id ?? null };
}
