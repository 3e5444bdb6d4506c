import { listDevices } from "@/db/queries/devices";
import { findOpenWalk, listCircuitNames, listWalkEntries, listWalks, type WalkRow } from "@/db/queries/walks";
import { listDesks, listZones } from "@/db/queries/zones";
import type { WalkEntryKind } from "@/lib/electrical/walk-entry";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";

/** A desk as the walk needs it: where it is, what the register has there, what this walk has entered of it. */
export type WalkDesk = {
  code: string;
  zoneCode: string;
  floor: string;
  note: string;
  devices: { id: number; label: string; deviceClass: string }[];
  entries: { clientId: string; kind: WalkEntryKind }[];
};

export type WalkView = {
  walk: WalkRow | null;
  desks: WalkDesk[];
  circuits: { id: number; name: string }[];
  /** Labels of the register, so that a phone without network can tell a label that is taken. */
  labels: string[];
  /** Devices of the register that this walk did not find at their desks. */
  missing: { id: number; label: string; deskCode: string }[];
  earlier: { id: number; startedAtMs: number; endedAtMs: number | null; startedBy: string }[];
};

/** Desks by floor and code with the state of the open walk. */
export function readWalk(ctx: Context, buildingId: number): WalkView {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const walk = findOpenWalk(ctx.db, buildingId) ?? null;
  const zones = listZones(ctx.db, buildingId);
  const zoneAt = new Map(zones.map((zone, at) => [zone.id, { zone, at }]));
  const devices = listDevices(ctx.db, buildingId);
  const entries = walk ? listWalkEntries(ctx.db, walk.id) : [];
  const desks = listDesks(ctx.db, buildingId)
    .map((desk) => ({ desk, place: zoneAt.get(desk.zoneId) }))
    .sort((a, b) => (a.place?.at ?? 0) - (b.place?.at ?? 0));
  const [devicesAt, entriesAt] = [groupedBy(devices), groupedBy(entries)];
  return {
    walk,
    desks: desks.map(({ desk, place }) => ({
      code: desk.code,
      zoneCode: place?.zone.code ?? "",
      floor: place?.zone.floor ?? "",
      note: desk.note,
      devices: (devicesAt.get(desk.id) ?? [])
        .filter((device) => device.retiredOn === null)
        .map(({ id, label, deviceClass }) => ({ id, label, deviceClass })),
      entries: (entriesAt.get(desk.id) ?? []).map(({ clientId, kind }) => ({ clientId, kind })),
    })),
    circuits: listCircuitNames(ctx.db, buildingId).map(({ id, panel, circuit }) => ({
      id,
      name: `${panel} ${circuit}`,
    })),
    labels: devices.map((device) => device.label),
    missing: entries.flatMap((entry) => {
      const device = entry.kind === "missing" ? devices.find((each) => each.id === entry.deviceId) : undefined;
      const desk = desks.find(({ desk: each }) => each.id === entry.deskId)?.desk;
      return device && desk ? [{ id: device.id, label: device.label, deskCode: desk.code }] : [];
    }),
    earlier: listWalks(ctx.db, buildingId).filter((each) => each.id !== walk?.id),
  };
}

function groupedBy<Row extends { deskId: number | null }>(rows: readonly Row[]): Map<number, Row[]> {
  const groups = new Map<number, Row[]>();
  for (const row of rows) {
    if (row.deskId === null) continue;
    const group = groups.get(row.deskId);
    if (group) group.push(row);
    else groups.set(row.deskId, [row]);
  }
  return groups;
}
