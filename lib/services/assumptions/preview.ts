import { findAssumption } from "@/lib/assumptions/all-assumptions";
import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import { type HeadlineOnly, headlineOnly } from "@/lib/overcooling/headline-only";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { currentAssessmentInput } from "../overcooling/assess";
import { costFindingSentences, type FindingSentence } from "../overcooling/finding-sentences";
import { parseInput } from "../parse";
import { type OverrideValues, overrideValues } from "./override";

/** What a value of an assumption would make of the cost; nothing is saved. */
export type OverrideEffect = {
  currency: string;
  before: Exclude<HeadlineOnly, { status: "blocked" }> | null;
  after: Exclude<HeadlineOnly, { status: "blocked" }> | null;
  /** Why there is no figure with the new value. */
  refusals: FindingSentence[];
};

/** The cost as it is and with another value of one assumption, by the same draws. */
export async function previewOverride(
  ctx: Context,
  buildingId: number,
  assumptionId: string,
  input: OverrideValues,
): Promise<OverrideEffect> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  if (!findAssumption(assumptionId)) throw new ServiceError("not-found", `There is no assumption "${assumptionId}".`);
  const values = parseInput(overrideValues, input);
  const present = await currentAssessmentInput(ctx, building);
  const assumptions = present.assumptions.map(
    (each): ResolvedAssumption => (each.id === assumptionId ? { ...each, ...values, origin: "entered" } : each),
  );
  const [before, after] = [headlineOnly(present), headlineOnly({ ...present, assumptions })];
  return {
    currency: building.currency,
    before: before.status === "ok" ? before : null,
    after: after.status === "ok" ? after : null,
    refusals: after.status === "blocked" ? costFindingSentences(after.findings) : [],
  };
}
