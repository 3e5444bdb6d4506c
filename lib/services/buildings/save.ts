import { inTransaction } from "@/db/client";
import { insertBuilding, replaceOccupiedHours, updateBuilding } from "@/db/queries/buildings";
import type { OccupiedHours } from "@/lib/time/occupied-hours";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { parseInput } from "../parse";
import { type BuildingInput, type BuildingValues, buildingInput } from "./building-input";
import { findBuildingOrRefuse } from "./find";

/** Sets up a building. Returns its id. */
export function createBuilding(ctx: Context, input: BuildingInput): number {
  requireFacilities(ctx);
  const values = parseInput(buildingInput, input);
  return inTransaction(ctx.db, (tx) => {
    const row = insertBuilding(tx, { ...columnsOf(values), createdAtMs: ctx.now, updatedAtMs: ctx.now });
    replaceOccupiedHours(tx, row.id, occupiedHoursOf(values));
    return row.id;
  });
}

/** Changes a building's description. Figures that depend on it are worked out anew when next asked for. */
export function reviseBuilding(ctx: Context, buildingId: number, input: BuildingInput): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const values = parseInput(buildingInput, input);
  inTransaction(ctx.db, (tx) => {
    updateBuilding(tx, buildingId, { ...columnsOf(values), updatedAtMs: ctx.now });
    replaceOccupiedHours(tx, buildingId, occupiedHoursOf(values));
  });
}

function columnsOf({ occupiedHours: _, ...columns }: BuildingValues) {
  return columns;
}

function occupiedHoursOf({ occupiedHours }: BuildingValues): OccupiedHours {
  return { weekdays: occupiedHours.weekdays, holidays: [...new Set(occupiedHours.holidays)].sort() };
}
