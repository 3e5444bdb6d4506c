import { type DeviceControlRow, listDeviceControls } from "@/db/queries/device-controls";
import { type DeviceEventRow, findDevice, listDeviceEvents } from "@/db/queries/devices";
import { type InspectionWithItems, listInspections, listOpenItems, type OpenItem } from "@/db/queries/inspections";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { type DeviceStatus, nextStatuses } from "@/lib/electrical/device-status";
import { CHECKLIST_IDS, checklistFor } from "@/lib/electrical/inspection/checklists";
import type { SafetyCondition } from "@/lib/electrical/inspection/inspection-words";
import { safetyCondition } from "@/lib/electrical/inspection/safety-condition";
import { requireFacilities } from "../authorise";
import { type CircuitView, circuitName, readCircuit } from "../circuits/read";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** What is on record of a device beside its sheet: its life, its inspections, its controls, its circuit. */
export type DeviceRecord = {
  events: DeviceEventRow[];
  next: readonly DeviceStatus[];
  inspections: InspectionWithItems[];
  open: OpenItem[];
  condition: SafetyCondition;
  controls: DeviceControlRow[];
  circuit: (CircuitView & { name: string }) | null;
  /** What each item of any checklist says, by its id. */
  faults: Record<string, string>;
};

export function readDeviceRecord(ctx: Context, buildingId: number, deviceId: number): DeviceRecord {
  requireFacilities(ctx);
  const device = findDevice(ctx.db, buildingId, deviceId);
  if (!device) throw new ServiceError("not-found", "This device does not exist.");
  const inspections = listInspections(ctx.db, deviceId);
  const open = listOpenItems(ctx.db, deviceId);
  const circuit = device.circuitId === null ? null : readCircuit(ctx, buildingId, device.circuitId);
  const inspected = { kind: device.kind, isContact: deviceClassById(device.deviceClass)?.isContact ?? false };
  return {
    events: listDeviceEvents(ctx.db, deviceId),
    next: nextStatuses(device.status),
    inspections,
    open,
    condition: safetyCondition(open, inspections.length > 0),
    controls: listDeviceControls(ctx.db, deviceId),
    circuit: circuit && { ...circuit, name: circuitName(circuit.circuit) },
    faults: Object.fromEntries(
      CHECKLIST_IDS.flatMap((id) => checklistFor(id, inspected).map((item) => [item.id, item.fault])),
    ),
  };
}
