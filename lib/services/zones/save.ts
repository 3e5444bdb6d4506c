import { findZone, findZoneByCode, insertZone, updateZone } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { type ZoneInput, zoneInput } from "./zone-input";

/** Adds a zone. Returns its id. */
export function addZone(ctx: Context, buildingId: number, input: ZoneInput): number {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const values = parseInput(zoneInput, input);
  refuseTakenCode(ctx, buildingId, values.code, null);
  return insertZone(ctx.db, { ...values, buildingId }).id;
}

/** Changes a zone's description. */
export function reviseZone(ctx: Context, buildingId: number, zoneId: number, input: ZoneInput): void {
  requireFacilities(ctx);
  if (!findZone(ctx.db, buildingId, zoneId)) throw new ServiceError("not-found", "This zone does not exist.");
  const values = parseInput(zoneInput, input);
  refuseTakenCode(ctx, buildingId, values.code, zoneId);
  updateZone(ctx.db, zoneId, values);
}

function refuseTakenCode(ctx: Context, buildingId: number, code: string, ownId: number | null): void {
  const other = findZoneByCode(ctx.db, buildingId, code);
  if (other && other.id !== ownId) {
    const message = `Zone ${code} is already there: give this one another code, or change that one.`;
    throw new ServiceError("conflict", message, { code: message });
  }
}
