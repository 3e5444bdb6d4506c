import { inTransaction } from "@/db/client";
import { deleteTariff, findTariff, replaceTariff, type TariffRow } from "@/db/queries/tariffs";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { type TariffInput, tariffInput } from "./tariff-input";

/** Enters a building's tariff; the one before is replaced. */
export function saveTariff(ctx: Context, buildingId: number, input: TariffInput): void {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const values = parseInput(tariffInput, input);
  if (building.electricityPriceKind === "blended") {
    const message =
      "The settings give a blended price, which has every charge inside. Give the marginal price there first, then the tariff.";
    throw new ServiceError("precondition", message, { energyKind: message });
  }
  inTransaction(ctx.db, (tx) => {
    replaceTariff(tx, { ...values, buildingId, enteredBy: actorName(actor), enteredAtMs: ctx.now });
  });
}

/** Takes a building's tariff away: the settings' one price stands again. */
export function removeTariff(ctx: Context, buildingId: number): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  deleteTariff(ctx.db, buildingId);
}

export function readTariff(ctx: Context, buildingId: number): TariffRow | null {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return findTariff(ctx.db, buildingId) ?? null;
}
