import type { BuildingRow } from "@/db/queries/buildings";
import { findBuilding } from "@/db/queries/buildings";
import { type DeviceWithSettings, findDevice, listDevices } from "@/db/queries/devices";
import { listDesks, listZones } from "@/db/queries/zones";
import { type DeviceSheet, deviceSheet, type SheetInput } from "@/lib/electrical/device-sheet";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** A device with its place and its settings worked out at the building's electricity price. */
export type DeviceView = DeviceWithSettings & { zoneCode: string; deskCode: string | null; sheet: DeviceSheet };

/** Price with which a device's energy is valued, as a term of its working. */
export function devicePrice(building: BuildingRow): SheetInput["price"] {
  return {
    pricePerKwh: building.electricityPricePerKwh,
    currency: building.currency,
    origin: "entered",
    source: `${building.electricityPriceKind === "blended" ? "Blended" : "Marginal"} electricity price of the building`,
    href: "/settings",
  };
}

export function sheetOf(device: DeviceWithSettings, building: BuildingRow): DeviceSheet {
  return deviceSheet({
    kind: device.kind,
    deviceClassId: device.deviceClass,
    settings: device.settings,
    nameplateW: device.nameplateW,
    nameplateVoltageV: device.nameplateVoltageV,
    price: devicePrice(building),
    href: `/devices/${device.id}`,
  });
}

/** All devices of a building, retired ones included. */
export function readDevices(ctx: Context, buildingId: number): DeviceView[] {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const zones = new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code]));
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  return listDevices(ctx.db, buildingId).map((device) => ({
    ...device,
    zoneCode: zones.get(device.zoneId) ?? "",
    deskCode: device.deskId === null ? null : (desks.get(device.deskId) ?? null),
    sheet: sheetOf(device, building),
  }));
}

export function readDevice(ctx: Context, buildingId: number, deviceId: number): DeviceView {
  requireFacilities(ctx);
  const building = findBuilding(ctx.db, buildingId);
  const device = building && findDevice(ctx.db, buildingId, deviceId);
  if (!building || !device) throw new ServiceError("not-found", "This device does not exist.");
  const zone = listZones(ctx.db, buildingId).find((each) => each.id === device.zoneId);
  const desk = listDesks(ctx.db, buildingId).find((each) => each.id === device.deskId);
  return { ...device, zoneCode: zone?.code ?? "", deskCode: desk?.code ?? null, sheet: sheetOf(device, building) };
}
