import { inTransaction } from "@/db/client";
import { findDevice, updateDevice } from "@/db/queries/devices";
import {
  findWalk,
  findWalkEntry,
  insertWalkEntry,
  listCircuitNames,
  listDeskEntries,
  type WalkEntryRow,
} from "@/db/queries/walks";
import { findDeskByCode, findZone } from "@/db/queries/zones";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { formatLocal } from "@/lib/time/format";
import { localDateAt } from "@/lib/time/local-date";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import type { DeviceInput } from "../devices/device-input";
import { registerDevice } from "../devices/register";
import { ServiceError } from "../errors";
import { type DeviceFound, type EntryOutcome, walkEntryInput } from "./entry-input";

/** Entries that are taken in one call: a phone that was offline for a floor sends them by and by. */
const MOST_ENTRIES = 50;

/**
 * Takes what a phone entered on a walk. Each entry stands by itself: stored once by its own id, however often it is sent;
 * refused with the reason; or held against entries of the same desk that the phone did not know, which are shown and never
 * written over.
 */
export function takeWalkEntries(ctx: Context, buildingId: number, entries: readonly unknown[]): EntryOutcome[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  if (entries.length > MOST_ENTRIES)
    throw new ServiceError("too-large", `Send at most ${MOST_ENTRIES} entries at a time.`);
  return entries.map((entry) => takeEntry(ctx, buildingId, entry));
}

function takeEntry(ctx: Context, buildingId: number, sent: unknown): EntryOutcome {
  const parsed = walkEntryInput.safeParse(sent);
  const clientId = String((sent as { clientId?: unknown } | null)?.clientId ?? "");
  if (!parsed.success) return refused(clientId, parsed.error.issues[0]?.message ?? "The entry cannot be read.", null);
  const entry = parsed.data;
  if (findWalkEntry(ctx.db, clientId)) return { clientId, state: "repeat", message: "", unknown: [], field: null };
  try {
    return inTransaction(ctx.db, () => storeEntry(ctx, buildingId, entry));
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    const [field, message] = Object.entries(error.fieldErrors)[0] ?? [null, error.message];
    return refused(clientId, message, field);
  }
}

const refused = (clientId: string, message: string, field: string | null): EntryOutcome => ({
  clientId,
  state: "refused",
  message,
  unknown: [],
  field,
});

type Entry = ReturnType<typeof walkEntryInput.parse>;

function storeEntry(ctx: Context, buildingId: number, entry: Entry): EntryOutcome {
  const { clientId, walkId, kind, madeAtMs, device } = entry;
  const walk = findWalk(ctx.db, buildingId, walkId);
  if (!walk) throw new ServiceError("not-found", "The walk that this entry belongs to does not exist any more.");
  const desk = findDeskByCode(ctx.db, buildingId, entry.deskCode);
  if (!desk) throw new ServiceError("not-found", `There is no desk ${entry.deskCode} in this building any more.`);
  const unknown = listDeskEntries(ctx.db, walkId, desk.id).filter(
    (other) => !entry.known.includes(other.clientId) && !agrees(other, entry),
  );
  if (unknown.length > 0) return conflictWith(ctx, buildingId, clientId, unknown);
  const deviceId =
    kind === "device" ? registerFound(ctx, buildingId, entry, device) : knownDevice(ctx, buildingId, entry);
  insertWalkEntry(ctx.db, {
    walkId,
    clientId,
    deskId: desk.id,
    kind,
    deviceId,
    madeAtMs,
    receivedAtMs: ctx.now,
    enteredBy: actorName(ctx.actor),
  });
  return { clientId, state: "stored", message: "", unknown: [], field: null };
}

/** Two people who say the same do not contradict each other; two devices found may be one that both saw. */
function agrees(other: WalkEntryRow, entry: Entry): boolean {
  if (other.kind === "device" || entry.kind === "device") return false;
  if (other.kind === "nothing" || entry.kind === "nothing") return other.kind === entry.kind;
  return other.deviceId !== entry.deviceId || other.kind === entry.kind;
}

function conflictWith(
  ctx: Context,
  buildingId: number,
  clientId: string,
  unknown: readonly WalkEntryRow[],
): EntryOutcome {
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const words = unknown.map((other) => {
    const label = other.deviceId === null ? null : findDevice(ctx.db, buildingId, other.deviceId)?.label;
    const what = {
      nothing: "nothing here",
      device: `device ${label ?? "since removed"}`,
      seen: `${label ?? "a device"} still here`,
      missing: `${label ?? "a device"} not here`,
    }[other.kind];
    return `"${what}" was entered by ${other.enteredBy} at ${formatLocal(other.madeAtMs, timeZone, "time")}`;
  });
  return {
    clientId,
    state: "conflict",
    message: `${words.join("; ")}. Nothing was written over: keep yours beside it, or drop yours.`,
    unknown: unknown.map((other) => other.clientId),
    field: null,
  };
}

function knownDevice(ctx: Context, buildingId: number, { kind, deviceId }: Entry): number | null {
  if (kind === "nothing") return null;
  const device = deviceId === null ? undefined : findDevice(ctx.db, buildingId, deviceId);
  if (!device) throw new ServiceError("not-found", "The device of this entry is no longer on the register.");
  return device.id;
}

function registerFound(ctx: Context, buildingId: number, entry: Entry, found: DeviceFound | null): number {
  if (!found) throw new ServiceError("invalid", "The entry does not say what was found.");
  const building = findBuildingOrRefuse(ctx, buildingId);
  const desk = findDeskByCode(ctx.db, buildingId, entry.deskCode);
  const zone = desk && findZone(ctx.db, buildingId, desk.zoneId);
  const foundOn = localDateAt(entry.madeAtMs, building.timeZone);
  const input = deviceInputOf(found, { voltageV: building.mainsVoltageV, foundOn });
  const id = registerDevice(ctx, buildingId, { ...input, zoneCode: zone?.code ?? "", deskCode: entry.deskCode });
  if (found.circuitId === null) return id;
  if (!listCircuitNames(ctx.db, buildingId).some((circuit) => circuit.id === found.circuitId))
    throw new ServiceError("invalid", "The circuit of this entry is no longer on record: choose another one.", {
      circuitId: "The circuit of this entry is no longer on record: choose another one.",
    });
  updateDevice(ctx.db, id, { circuitId: found.circuitId, circuitMapping: found.circuitMapping });
  return id;
}

/** What was found as the register takes it: settings that were read by their meter, the others as usual of the class. */
function deviceInputOf(
  found: DeviceFound,
  site: { voltageV: number; foundOn: string },
): Omit<DeviceInput, "zoneCode" | "deskCode"> {
  const deviceClass = deviceClassById(found.deviceClass);
  if (!deviceClass) throw new ServiceError("invalid", `The class ${found.deviceClass} is not known.`);
  const readings = new Map(found.readings.map(({ setting, value }) => [setting, value]));
  const isClamp = found.meterKind === "clamp";
  return {
    label: found.label,
    kind: deviceClass.kind,
    deviceClass: deviceClass.id,
    foundOn: site.foundOn,
    note: found.note,
    nameplateW: found.nameplateW,
    hasThermostat: deviceClass.kind === "space-heater" && !deviceClass.isContact,
    settings: deviceClass.settings.map(({ name }) => {
      const value = readings.get(name);
      if (value === undefined) return { name, basis: "class-default" as const, voltageV: site.voltageV };
      const meterName = found.meterName;
      return isClamp
        ? {
            name,
            basis: "clamp" as const,
            currentA: value,
            rawReadingA: value,
            currentResolutionA: found.meterResolutionA,
            voltageV: site.voltageV,
            meterName,
          }
        : { name, basis: "plug-meter" as const, powerW: value, voltageV: site.voltageV, meterName };
    }),
  };
}
