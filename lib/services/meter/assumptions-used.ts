import { assumptionsUsed } from "@/lib/working/working";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { meterSubject, metersOf } from "./meters";
import type { MeterResult } from "./read";

/**
 * Ids of the assumptions that what a kelvin is worth rests on, by any of the building's meters as last worked out. Nothing
 * is worked out for it: a page of assumptions does not wait for a model.
 */
export function meterAssumptions(ctx: Context, buildingId: number): string[] {
  requireFacilities(ctx);
  const ids = metersOf(ctx, buildingId).flatMap((meter) => {
    const kept = ctx.results.find(buildingId, meterSubject(meter))?.result as MeterResult | undefined;
    return kept?.worth ? assumptionsUsed(kept.worth.money.working) : [];
  });
  return [...new Set(ids)];
}
