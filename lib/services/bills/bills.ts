import { deleteElectricityBill, type ElectricityBillRow, listElectricityBills } from "@/db/queries/electricity-bills";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** A building's bills in the order of time. */
export function readBills(ctx: Context, buildingId: number): ElectricityBillRow[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listElectricityBills(ctx.db, buildingId);
}

/** Takes a bill out, so that one with other days can be brought in. */
export function removeBill(ctx: Context, buildingId: number, billId: number): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  if (!deleteElectricityBill(ctx.db, buildingId, billId))
    throw new ServiceError("not-found", "This bill is not among the building's any more.");
}
