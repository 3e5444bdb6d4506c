import { findZone, type ZoneRow } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** A zone of a building, or a refusal that says it is not there. */
export function readZone(ctx: Context, buildingId: number, zoneId: number): ZoneRow {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const zone = findZone(ctx.db, buildingId, zoneId);
  if (!zone) throw new ServiceError("not-found", "This zone does not exist.");
  return zone;
}
