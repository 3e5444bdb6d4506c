import { z } from "zod";
import { inTransaction } from "@/db/client";
import { endOverride, insertOverride } from "@/db/queries/assumption-overrides";
import { findAssumption } from "@/lib/assumptions/all-assumptions";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

const numbers = z.object({
  value: z.number("Give the value as a number."),
  low: z.number("Give the lowest plausible value as a number."),
  high: z.number("Give the highest plausible value as a number."),
});

const inOrder = {
  check: (each: z.output<typeof numbers>): boolean => each.low <= each.value && each.value <= each.high,
  refusal: { path: ["value"], message: "The value must lie between the lowest and the highest plausible value." },
};

/** A value with its range, without the reason that saving it takes. */
export const overrideValues = numbers.refine(inOrder.check, inOrder.refusal);
export type OverrideValues = z.input<typeof overrideValues>;

const overrideInput = numbers
  .extend({
    reason: z
      .string()
      .trim()
      .min(3, "Say why: a measurement, a nameplate, a contract. The next reader will ask.")
      .max(500, "Keep the reason under 500 characters."),
  })
  .refine(inOrder.check, inOrder.refusal);

export type OverrideInput = z.input<typeof overrideInput>;

/** Gives a building its own value of an assumption. The default and all earlier values stay on record. */
export function overrideAssumption(ctx: Context, buildingId: number, assumptionId: string, input: OverrideInput): void {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  if (!findAssumption(assumptionId)) throw new ServiceError("not-found", `There is no assumption "${assumptionId}".`);
  const values = parseInput(overrideInput, input);
  const who = actorName(actor);
  inTransaction(ctx.db, (tx) => {
    endOverride(tx, buildingId, assumptionId, { endedAtMs: ctx.now, endedBy: who });
    insertOverride(tx, { ...values, buildingId, assumptionId, enteredBy: who, enteredAtMs: ctx.now });
  });
}

/** Goes back to the default. */
export function withdrawOverride(ctx: Context, buildingId: number, assumptionId: string): void {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  endOverride(ctx.db, buildingId, assumptionId, { endedAtMs: ctx.now, endedBy: actorName(actor) });
}
