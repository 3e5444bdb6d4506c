import type { Queryable } from "@/db/client";
import { listDesks, listZones } from "@/db/queries/zones";
import { DEVICE_CLASSES, deviceClassById } from "@/lib/electrical/device-classes";
import { resolvedSetting } from "@/lib/electrical/resolved-setting";
import { settingPower } from "@/lib/electrical/setting-power";
import { type BillRow, readBillsTable } from "@/lib/importers/tables/read-bills";
import { type DeskRow, readDesksTable } from "@/lib/importers/tables/read-desks";
import { type DeviceRow, readDevicesTable } from "@/lib/importers/tables/read-devices";
import { readZonesTable, type ZoneRow } from "@/lib/importers/tables/read-zones";
import type { TableKind, TableRead } from "@/lib/importers/tables/table-read";

/** A table file as read against what the building has. */
export type ReadTable =
  | { kind: "zones"; read: TableRead<ZoneRow> }
  | { kind: "desks"; read: TableRead<DeskRow> }
  | { kind: "devices"; read: TableRead<DeviceRow> }
  | { kind: "bills"; read: TableRead<BillRow> };

export function readTable(db: Queryable, buildingId: number, kind: TableKind, bytes: Uint8Array): ReadTable {
  if (kind === "bills") return { kind, read: readBillsTable({ bytes }) };
  if (kind === "zones") return { kind, read: readZonesTable({ bytes }) };
  const zones = listZones(db, buildingId);
  const zoneCodes = zones.map((zone) => zone.code);
  if (kind === "desks") return { kind, read: readDesksTable({ bytes }, { zoneCodes }) };
  const codes = new Map(zones.map((zone) => [zone.id, zone.code]));
  const desks = listDesks(db, buildingId).map(({ code, zoneId }) => ({ code, zoneCode: codes.get(zoneId) ?? "" }));
  const read = readDevicesTable(
    { bytes },
    {
      zoneCodes,
      desks,
      classes: DEVICE_CLASSES,
      settingFaults(setting, device) {
        const reading = {
          ...setting,
          ...resolvedSetting(setting),
          kind: device.kind,
          settingName: setting.name,
          voltageMeasured: true,
        };
        const power = settingPower(reading, deviceClassById(device.deviceClass));
        return power.status === "refused" ? [power.message.replace(/\.$/, "")] : [];
      },
    },
  );
  return { kind, read };
}
