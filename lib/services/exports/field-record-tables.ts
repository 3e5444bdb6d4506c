import { listDevicePhotos } from "@/db/queries/device-photos";
import { listPlugLogs } from "@/db/queries/plug-logs";
import { listWalkEntries, listWalks } from "@/db/queries/walks";
import { listDesks } from "@/db/queries/zones";
import type { Context } from "../context";
import type { DeviceView } from "../devices/read";
import { instant, type RegisterTable } from "./register-table";

/** A row a level of power that was found in a plug log. */
export function plugLogsTable(ctx: Context, devices: readonly DeviceView[]): RegisterTable {
  return {
    name: "plug logs",
    columns: [
      "label",
      "file",
      "from (UTC)",
      "to (UTC)",
      "logged (h)",
      "gaps (h)",
      "energy (kWh)",
      "level (W)",
      "setting",
      "at level (h)",
      "selected (h)",
      "duty (0 to 1)",
      "energy at level (kWh)",
      "longest run (h)",
      "on outside occupied hours (h)",
      "raw readings deleted at (UTC)",
    ],
    rows: devices.flatMap((device) =>
      listPlugLogs(ctx.db, device.id).flatMap((log) =>
        log.figures.states.map((state) => [
          device.label,
          log.fileName,
          instant(log.fromMs),
          instant(log.toMs),
          log.figures.loggedHours,
          log.figures.gapHours,
          log.energyKwh,
          state.powerW,
          state.setting?.name ?? null,
          state.hours,
          state.selectedHours,
          state.dutyFraction,
          state.energyKwh,
          state.longestRunHours,
          log.figures.outsideOccupied.hours,
          instant(log.rawDeletedAtMs),
        ]),
      ),
    ),
  };
}

export function photosTable(ctx: Context, devices: readonly DeviceView[]): RegisterTable {
  return {
    name: "photos",
    columns: [
      "label",
      "caption",
      "SHA-256 of the file",
      "size (bytes)",
      "width (px)",
      "height (px)",
      "entered by",
      "entered at (UTC)",
    ],
    rows: devices.flatMap((device) =>
      listDevicePhotos(ctx.db, device.id).map((photo) => [
        device.label,
        photo.caption,
        photo.sha256,
        photo.byteCount,
        photo.widthPx,
        photo.heightPx,
        photo.enteredBy,
        instant(photo.enteredAtMs),
      ]),
    ),
  };
}

export function walksTable(ctx: Context, buildingId: number, devices: readonly DeviceView[]): RegisterTable {
  const labels = new Map(devices.map((device) => [device.id, device.label]));
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  return {
    name: "walks",
    columns: ["walk", "desk", "entry", "label", "made at (UTC)", "received at (UTC)", "entered by"],
    rows: listWalks(ctx.db, buildingId).flatMap((walk) =>
      listWalkEntries(ctx.db, walk.id).map((entry) => [
        walk.id,
        desks.get(entry.deskId) ?? null,
        entry.kind,
        entry.deviceId === null ? null : (labels.get(entry.deviceId) ?? null),
        instant(entry.madeAtMs),
        instant(entry.receivedAtMs),
        entry.enteredBy,
      ]),
    ),
  };
}
