import type { AppTransaction } from "@/db/client";
import { moveLinksOfDesk } from "@/db/queries/comfort";
import {
  type DeviceSettingRow,
  findDevice,
  findDeviceByLabel,
  insertDevice,
  moveDevicesOfDesk,
  replaceSettings,
  updateDevice,
} from "@/db/queries/devices";
import { findElectricityBill, insertElectricityBill, updateElectricityBill } from "@/db/queries/electricity-bills";
import { findDeskByCode, findZoneByCode, insertDesk, insertZone, updateDesk, updateZone } from "@/db/queries/zones";
import type { BillRow } from "@/lib/importers/tables/read-bills";
import type { DeskRow } from "@/lib/importers/tables/read-desks";
import type { DeviceRow } from "@/lib/importers/tables/read-devices";
import type { ZoneRow } from "@/lib/importers/tables/read-zones";
import { writeStep } from "../devices/life";
import type { ReadTable } from "./read-table";

/** What became of the things that the rows describe. */
export type Taken = { added: number; changed: number; same: number };

type At = { buildingId: number; now: number; today: string; enteredBy: string };

/** Writes the accepted rows of a table; a thing that stands as the row says counts as the same and is not written. */
export function takeRows(tx: AppTransaction, table: ReadTable, at: At): Taken {
  const taken: Taken = { added: 0, changed: 0, same: 0 };
  if (table.read.status === "refused") return taken;
  switch (table.kind) {
    case "zones":
      for (const { row } of table.read.rows) taken[takeZone(tx, row, table.read.fields, at)] += 1;
      break;
    case "desks":
      for (const { row } of table.read.rows) taken[takeDesk(tx, row, table.read.fields, at)] += 1;
      break;
    case "devices":
      for (const { row } of table.read.rows) taken[takeDevice(tx, row, table.read.fields, at)] += 1;
      break;
    case "bills":
      for (const { row } of table.read.rows) taken[takeBill(tx, row, table.read.fields, at)] += 1;
  }
  return taken;
}

function takeZone(tx: AppTransaction, row: ZoneRow, fields: readonly string[], { buildingId }: At): keyof Taken {
  const present = findZoneByCode(tx, buildingId, row.code);
  if (!present) {
    insertZone(tx, { ...row, buildingId });
    return "added";
  }
  const said = only(row, fields);
  if (agrees(present, said)) return "same";
  updateZone(tx, present.id, said);
  return "changed";
}

function takeDesk(
  tx: AppTransaction,
  { zoneCode, ...row }: DeskRow,
  fields: readonly string[],
  { buildingId }: At,
): keyof Taken {
  const zone = findZoneByCode(tx, buildingId, zoneCode);
  if (!zone) throw new Error(`desk ${row.code} was accepted for a zone that is not there`);
  const present = findDeskByCode(tx, buildingId, row.code);
  if (!present) {
    insertDesk(tx, { ...row, buildingId, zoneId: zone.id });
    return "added";
  }
  const said = { ...only(row, fields), zoneId: zone.id };
  if (agrees(present, said)) return "same";
  updateDesk(tx, present.id, said);
  if (zone.id !== present.zoneId) {
    moveDevicesOfDesk(tx, present.id, zone.id);
    moveLinksOfDesk(tx, present.id, zone.id);
  }
  return "changed";
}

function takeDevice(
  tx: AppTransaction,
  row: DeviceRow,
  fields: readonly string[],
  { buildingId, now, today, enteredBy }: At,
): keyof Taken {
  const { zoneCode, deskCode, settings: given, ...columns } = row;
  const zone = findZoneByCode(tx, buildingId, zoneCode);
  if (!zone) throw new Error(`device ${row.label} was accepted for a zone that is not there`);
  const deskId = deskCode === null ? null : (findDeskByCode(tx, buildingId, deskCode)?.id ?? null);
  const placed = { ...columns, zoneId: zone.id, deskId };
  const found = findDeviceByLabel(tx, buildingId, row.label);
  if (!found) {
    const { id } = insertDevice(tx, { ...placed, buildingId, foundOn: today, createdAtMs: now, updatedAtMs: now });
    replaceSettings(tx, id, given.map(wholeSetting));
    writeStep(tx, id, { status: "found", onDate: today, enteredBy, enteredAtMs: now });
    return "added";
  }
  const present = findDevice(tx, buildingId, found.id)?.settings ?? [];
  // Without a column of desks a device stays at its desk, unless its zone has changed.
  const keepsDesk = !fields.includes("deskCode") && found.zoneId === zone.id;
  const said = { ...placed, deskId: keepsDesk ? found.deskId : deskId };
  const settings = given.map((each) => {
    const before = present.find(({ name }) => name === each.name);
    return before ? { ...settingOf(before), ...only(wholeSetting(each), settingFields(fields)) } : wholeSetting(each);
  });
  const settingsAgree =
    present.length === settings.length && settings.every((each, i) => agrees(present[i] as object, each));
  if (settingsAgree && agrees(found, said)) return "same";
  updateDevice(tx, found.id, { ...said, updatedAtMs: now });
  replaceSettings(tx, found.id, settings);
  return "changed";
}

/** A bill is known by its first day: the same day again brings it up to date. */
function takeBill(tx: AppTransaction, row: BillRow, fields: readonly string[], { buildingId }: At): keyof Taken {
  const present = findElectricityBill(tx, buildingId, row.fromDate);
  if (!present) {
    insertElectricityBill(tx, { ...row, buildingId });
    return "added";
  }
  const said = only(row, fields);
  if (agrees(present, said)) return "same";
  updateElectricityBill(tx, present.id, said);
  return "changed";
}

/** A voltage in a table is one that was read at the outlet. */
const settingFields = (fields: readonly string[]): string[] => [
  ...fields,
  "name",
  ...(fields.includes("powerW") ? ["nameplateW"] : []),
  ...(fields.includes("currentA") ? ["rawReadingA", "clampTurns"] : []),
  ...(fields.includes("voltageV") ? ["voltageMeasured"] : []),
];

const wholeSetting = ({ powerW, ...setting }: DeviceRow["settings"][number]) => ({
  ...setting,
  rawReadingA: setting.currentA,
  clampTurns: 1,
  powerW: setting.basis === "nameplate" ? null : powerW,
  nameplateW: setting.basis === "nameplate" ? powerW : null,
  voltageMeasured: setting.voltageV !== null,
  hoursPerYear: setting.hoursPerYear ?? 0,
  dutyFraction: setting.dutyFraction ?? 1,
});

const settingOf = ({ id: _id, deviceId: _device, position: _position, ...setting }: DeviceSettingRow) => setting;

/** The values of the columns that the file has: a file without a column says nothing of it. */
function only<Row extends object>(row: Row, fields: readonly string[]): Partial<Row> {
  return Object.fromEntries(Object.entries(row).filter(([key]) => fields.includes(key))) as Partial<Row>;
}

/** True when `present` has every value of `wanted`. */
function agrees(present: object, wanted: object): boolean {
  return Object.entries(wanted).every(([key, value]) => (present as Record<string, unknown>)[key] === value);
}
