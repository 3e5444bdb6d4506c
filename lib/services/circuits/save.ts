import { inTransaction } from "@/db/client";
import {
  deleteBranchCircuit,
  findBranchCircuit,
  findBranchCircuitByName,
  insertBranchCircuit,
  updateBranchCircuit,
} from "@/db/queries/branch-circuits";
import { findDevice, findDeviceByLabel, updateDevice } from "@/db/queries/devices";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { type CircuitEntry, circuitInput, type HookUpEntry, hookUpInput } from "./circuit-input";

/** Puts a branch circuit on the register. Returns its id. */
export function addCircuit(ctx: Context, buildingId: number, input: CircuitEntry): number {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const row = named(ctx, buildingId, input, null);
  return insertBranchCircuit(ctx.db, { ...row, buildingId, createdAtMs: ctx.now, updatedAtMs: ctx.now }).id;
}

export function reviseCircuit(ctx: Context, buildingId: number, circuitId: number, input: CircuitEntry): void {
  requireFacilities(ctx);
  circuitOrRefuse(ctx, buildingId, circuitId);
  updateBranchCircuit(ctx.db, circuitId, { ...named(ctx, buildingId, input, circuitId), updatedAtMs: ctx.now });
}

/** Takes a circuit off the register; the devices on it stay, on no circuit that is known. */
export function removeCircuit(ctx: Context, buildingId: number, circuitId: number): void {
  requireFacilities(ctx);
  circuitOrRefuse(ctx, buildingId, circuitId);
  inTransaction(ctx.db, (tx) => deleteBranchCircuit(tx, circuitId));
}

/** Says on which circuit and outlet a device hangs, and how that is known; null takes it off. */
export function hookUpDevice(ctx: Context, buildingId: number, deviceId: number, input: HookUpEntry): void {
  requireFacilities(ctx);
  if (!findDevice(ctx.db, buildingId, deviceId)) throw new ServiceError("not-found", "This device does not exist.");
  const said = parseInput(hookUpInput, input);
  if (said.circuitId !== null) circuitOrRefuse(ctx, buildingId, said.circuitId);
  updateDevice(ctx.db, deviceId, { ...said, updatedAtMs: ctx.now });
}

/** The same for a device named by its label, as on the page of a circuit. */
export function hookUpByLabel(ctx: Context, buildingId: number, label: string, input: HookUpEntry): void {
  requireFacilities(ctx);
  const device = findDeviceByLabel(ctx.db, buildingId, label.trim());
  if (!device) {
    const message = `There is no device labelled "${label.trim()}" on the register: correct the name, or register it first.`;
    throw new ServiceError("invalid", message, { deviceLabel: message });
  }
  if (device.retiredOn !== null) {
    const message = `Device ${device.label} was removed on ${device.retiredOn}: enter its return first.`;
    throw new ServiceError("invalid", message, { deviceLabel: message });
  }
  hookUpDevice(ctx, buildingId, device.id, input);
}

function circuitOrRefuse(ctx: Context, buildingId: number, circuitId: number) {
  const circuit = findBranchCircuit(ctx.db, buildingId, circuitId);
  if (!circuit) throw new ServiceError("not-found", "This circuit does not exist.");
  return circuit;
}

/** The parsed circuit; refuses a name that is taken. */
function named(ctx: Context, buildingId: number, input: CircuitEntry, ownId: number | null) {
  const row = parseInput(circuitInput, input);
  const other = findBranchCircuitByName(ctx.db, buildingId, row.panel, row.circuit);
  if (other && other.id !== ownId) {
    const message = `Circuit ${row.circuit} of panel ${row.panel} is already on the register: correct the number.`;
    throw new ServiceError("invalid", message, { circuit: message });
  }
  return row;
}
