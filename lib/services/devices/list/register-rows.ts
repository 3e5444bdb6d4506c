import type { BuildingRow } from "@/db/queries/buildings";
import { listDevices } from "@/db/queries/devices";
import { lastInspections, listOpenItemsOfBuilding } from "@/db/queries/inspections";
import { listDesks, listZones } from "@/db/queries/zones";
import { type DeviceFigures, deviceFigures } from "@/lib/electrical/device-figures";
import type { DeviceKind, PowerBasis } from "@/lib/electrical/device-kind";
import type { DeviceStatus } from "@/lib/electrical/device-status";
import type { SafetyCondition } from "@/lib/electrical/inspection/inspection-words";
import { safetyCondition } from "@/lib/electrical/inspection/safety-condition";
import type { Context } from "../../context";
import { groupBy } from "../../group-by";
import { devicePrice } from "../read";

/** A device in a line of the register. */
export type RegisterRow = {
  id: number;
  label: string;
  kind: DeviceKind;
  deviceClass: string;
  zoneId: number;
  zoneCode: string;
  floor: string;
  deskCode: string;
  status: DeviceStatus;
  /** Removed devices are shown and not counted. */
  retiredOn: string | null;
  foundOn: string;
  condition: SafetyCondition;
  nextDueOn: string | null;
  origin: PowerBasis;
  /** What the words of a search are looked for in. */
  searched: string;
} & DeviceFigures;

/** Every device of a building, in the natural order of its label, with its figures at the building's price. */
export function registerRows(ctx: Context, building: BuildingRow): RegisterRow[] {
  const zones = new Map(listZones(ctx.db, building.id).map((zone) => [zone.id, zone]));
  const desks = new Map(listDesks(ctx.db, building.id).map((desk) => [desk.id, desk]));
  const inspections = lastInspections(ctx.db, building.id);
  const open = groupBy(listOpenItemsOfBuilding(ctx.db, building.id), ({ deviceId }) => deviceId);
  const price = devicePrice(building);
  return listDevices(ctx.db, building.id).map((device): RegisterRow => {
    const zone = zones.get(device.zoneId);
    const desk = device.deskId === null ? undefined : desks.get(device.deskId);
    const inspection = inspections.get(device.id);
    return {
      id: device.id,
      label: device.label,
      kind: device.kind,
      deviceClass: device.deviceClass,
      zoneId: device.zoneId,
      zoneCode: zone?.code ?? "",
      floor: desk?.floor || zone?.floor || "",
      deskCode: desk?.code ?? "",
      status: device.status,
      retiredOn: device.retiredOn,
      foundOn: device.foundOn,
      condition: safetyCondition(open.get(device.id) ?? [], inspection !== undefined),
      nextDueOn: inspection?.nextDueOn ?? null,
      searched: `${device.label} ${desk?.code ?? ""} ${device.make} ${device.model}`.toLowerCase(),
      ...deviceFigures({
        kind: device.kind,
        deviceClassId: device.deviceClass,
        settings: device.settings,
        nameplateW: device.nameplateW,
        nameplateVoltageV: device.nameplateVoltageV,
        price,
      }),
    };
  });
}
