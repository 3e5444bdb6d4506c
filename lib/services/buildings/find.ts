import { type BuildingRow, findBuilding, findOccupiedHours, listBuildings } from "@/db/queries/buildings";
import type { OccupiedHours } from "@/lib/time/occupied-hours";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";

export type Building = BuildingRow & { occupiedHours: OccupiedHours };

/** The building, or a refusal that says it is not there. Checks no right: a use-case has done so before. */
export function findBuildingOrRefuse(ctx: Context, buildingId: number): BuildingRow {
  const row = Number.isSafeInteger(buildingId) ? findBuilding(ctx.db, buildingId) : undefined;
  if (!row) throw new ServiceError("not-found", `There is no building number ${buildingId}.`);
  return row;
}

export function readBuilding(ctx: Context, buildingId: number): Building {
  requireFacilities(ctx);
  const row = findBuildingOrRefuse(ctx, buildingId);
  return { ...row, occupiedHours: findOccupiedHours(ctx.db, buildingId) };
}

export function readBuildings(ctx: Context): BuildingRow[] {
  requireFacilities(ctx);
  return listBuildings(ctx.db);
}
