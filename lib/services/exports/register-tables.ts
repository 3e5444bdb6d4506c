import { listBranchCircuits } from "@/db/queries/branch-circuits";
import { listBuildingDeviceEvents } from "@/db/queries/devices";
import { listInspections } from "@/db/queries/inspections";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { circuitName } from "../circuits/read";
import type { Context } from "../context";
import { type DeviceView, readDevices } from "../devices/read";
import { photosTable, plugLogsTable, walksTable } from "./field-record-tables";
import { settingsTable } from "./register-settings-table";
import { instant, type RegisterTable } from "./register-table";

/**
 * Everything that is on record of the devices of a building, and what is worked out of it: units in the headings, the
 * origin of every figure beside it. What is not known is an empty cell, never a 0.
 */
export function registerTables(ctx: Context, buildingId: number): RegisterTable[] {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const devices = readDevices(ctx, buildingId);
  return [
    devicesTable(ctx, buildingId, devices, building.currency),
    settingsTable(devices, building.currency),
    circuitsTable(ctx, buildingId),
    stepsTable(ctx, buildingId, devices),
    inspectionsTable(ctx, devices),
    plugLogsTable(ctx, devices),
    photosTable(ctx, devices),
    walksTable(ctx, buildingId, devices),
  ];
}

function devicesTable(
  ctx: Context,
  buildingId: number,
  devices: readonly DeviceView[],
  currency: string,
): RegisterTable {
  const circuits = new Map(listBranchCircuits(ctx.db, buildingId).map((each) => [each.id, circuitName(each)]));
  return {
    name: "devices",
    columns: [
      "label",
      "kind",
      "class",
      "class in words",
      "zone",
      "desk",
      "status",
      "found on",
      "removed on",
      "make",
      "model",
      "date code",
      "nameplate power (W)",
      "nameplate current (A)",
      "nameplate voltage (V)",
      "has thermostat",
      "fastened in place",
      "circuit",
      "circuit known by",
      "outlet",
      "outlet label",
      "longest run at highest setting (h)",
      "highest setting (W)",
      "energy (kWh/year)",
      "energy low (kWh/year)",
      "energy high (kWh/year)",
      "energy is an upper bound",
      `cost (${currency}/year)`,
      "note",
      "changed at (UTC)",
    ],
    rows: devices.map((device) => {
      const { energy, highPowerW, totalCost } = device.sheet;
      const total = energy.status === "ok" ? energy.totalKwh : null;
      return [
        device.label,
        device.kind,
        device.deviceClass,
        deviceClassById(device.deviceClass)?.label ?? null,
        device.zoneCode,
        device.deskCode,
        device.status,
        device.foundOn,
        device.retiredOn,
        device.make,
        device.model,
        device.dateCode,
        device.nameplateW,
        device.nameplateA,
        device.nameplateVoltageV,
        device.hasThermostat,
        device.isFastened,
        device.circuitId === null ? null : (circuits.get(device.circuitId) ?? null),
        device.circuitMapping,
        device.outletKind,
        device.outletLabel,
        device.longestRunHours,
        highPowerW,
        total?.value ?? null,
        total?.low ?? null,
        total?.high ?? null,
        energy.status === "ok" ? energy.isUpperBound : null,
        totalCost?.value ?? null,
        device.note,
        instant(device.updatedAtMs),
      ];
    }),
  };
}

function circuitsTable(ctx: Context, buildingId: number): RegisterTable {
  return {
    name: "circuits",
    columns: [
      "circuit",
      "leg",
      "breaker (A)",
      "voltage (V)",
      "receptacle (A)",
      "wiring",
      "base load continuous (A)",
      "base load other (A)",
      "base load from",
      "rule set",
      "trips",
      "note",
    ],
    rows: listBranchCircuits(ctx.db, buildingId).map((each) => [
      circuitName(each),
      each.leg,
      each.breakerRatingA,
      each.voltageV,
      each.receptacleRatingA,
      each.wiring,
      each.baseContinuousA,
      each.baseNonContinuousA,
      each.baseLoadNote,
      each.ruleSet,
      each.tripNote,
      each.note,
    ]),
  };
}

function stepsTable(ctx: Context, buildingId: number, devices: readonly DeviceView[]): RegisterTable {
  const labels = new Map(devices.map((device) => [device.id, device.label]));
  return {
    name: "steps",
    columns: ["label", "status", "on", "note", "entered by", "entered at (UTC)"],
    rows: listBuildingDeviceEvents(ctx.db, buildingId).map((each) => [
      labels.get(each.deviceId) ?? null,
      each.status,
      each.onDate,
      each.note,
      each.enteredBy,
      instant(each.enteredAtMs),
    ]),
  };
}

function inspectionsTable(ctx: Context, devices: readonly DeviceView[]): RegisterTable {
  return {
    name: "inspections",
    columns: [
      "label",
      "inspected on",
      "checklist",
      "item",
      "severity",
      "outcome",
      "note",
      "due on",
      "corrected on",
      "corrected by",
      "entered by",
    ],
    rows: devices.flatMap((device) =>
      listInspections(ctx.db, device.id).flatMap((inspection) =>
        inspection.items.map((item) => [
          device.label,
          inspection.inspectedOn,
          inspection.checklist,
          item.itemId,
          item.severity,
          item.outcome,
          item.note,
          item.dueOn,
          item.correctedOn,
          item.correctedBy,
          inspection.enteredBy,
        ]),
      ),
    ),
  };
}
