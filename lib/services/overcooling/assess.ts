import type { BuildingRow } from "@/db/queries/buildings";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { BuildingAssessment } from "@/lib/overcooling/assessment";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { cached, fingerprintOf } from "../cached";
import type { Context } from "../context";
import { readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "../zones/overview";
import { assessmentInput } from "./assessment-input";

export type CostOfOvercooling = {
  assessment: BuildingAssessment;
  /** When it was worked out. */
  computedAtMs: number;
  record: { fromUtcSeconds: number; toUtcSeconds: number } | null;
};

/** What overcooling costs a building a year. Worked out anew only when something it rests on has changed. */
export async function readCostOfOvercooling(ctx: Context, buildingId: number): Promise<CostOfOvercooling> {
  requireFacilities(ctx);
  return costOf(ctx, findBuildingOrRefuse(ctx, buildingId));
}

/** What a building's cost rests on as it stands now. */
export async function currentAssessmentInput(ctx: Context, building: BuildingRow): Promise<AssessmentInput> {
  const threshold = seasonThresholdC(ctx, building.id);
  return assessmentInput(ctx, building, await readBuildingAnalysis(ctx, building, threshold), threshold);
}

async function costOf(ctx: Context, building: BuildingRow): Promise<CostOfOvercooling> {
  const threshold = seasonThresholdC(ctx, building.id);
  const analysis = await readBuildingAnalysis(ctx, building, threshold);
  const input = await assessmentInput(ctx, building, analysis, threshold);
  const { weather, ...rest } = input;
  const fingerprint = fingerprintOf({
    version: 7,
    rest,
    weather: weather && [Array.from(weather.dryBulbC), Array.from(weather.occupied)],
  });
  const { result, computedAtMs } = await cached(
    ctx,
    { buildingId: building.id, subject: "overcooling", fingerprint },
    async () => assessBuilding(input),
  );
  return { assessment: result, computedAtMs, record: analysis.record };
}
