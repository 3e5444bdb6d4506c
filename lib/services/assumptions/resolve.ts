import { listCurrentOverrides } from "@/db/queries/assumption-overrides";
import { ALL_ASSUMPTIONS } from "@/lib/assumptions/all-assumptions";
import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";

/** Every assumption as it applies to a building: its own value where it has one, else the default. */
export function resolveAssumptions(ctx: Pick<Context, "db">, buildingId: number): ResolvedAssumption[] {
  const overrides = new Map(listCurrentOverrides(ctx.db, buildingId).map((row) => [row.assumptionId, row]));
  return ALL_ASSUMPTIONS.map((assumption) => {
    const override = overrides.get(assumption.id);
    if (!override) return { ...assumption, origin: "default" as const };
    const { value, low, high } = override;
    const byDefault = { value: assumption.value, low: assumption.low, high: assumption.high };
    return { ...assumption, value, low, high, origin: "entered" as const, override, byDefault };
  });
}

export function readAssumptions(ctx: Context, buildingId: number): ResolvedAssumption[] {
  requireFacilities(ctx);
  return resolveAssumptions(ctx, buildingId);
}
