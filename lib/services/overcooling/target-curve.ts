import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { type TargetCurve, targetCurve } from "@/lib/overcooling/target-curve";
import { annualise } from "@/lib/trends/annualise";
import { exposureAtTarget } from "@/lib/trends/exposure-at-target";
import type { AnnualBin } from "@/lib/trends/outdoor-bins";
import { CURVE_TARGETS_C } from "@/lib/trends/target-tally";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { cached, fingerprintOf } from "../cached";
import type { Context } from "../context";
import { readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "../zones/overview";
import { assessmentInput, seasonBins } from "./assessment-input";

/** What overcooling would cost a year against each target from 22 to 25 °C, and against the building's own. */
export async function readTargetCurve(ctx: Context, buildingId: number): Promise<TargetCurve> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const threshold = seasonThresholdC(ctx, building.id);
  const analysis = await readBuildingAnalysis(ctx, building, threshold);
  const input = await assessmentInput(ctx, building, analysis, threshold);
  const { weather, ...rest } = input;
  const fingerprint = fingerprintOf({
    version: 2,
    rest,
    weather: weather && [Array.from(weather.dryBulbC), Array.from(weather.occupied)],
  });
  const about = { buildingId: building.id, subject: "target-curve", fingerprint };
  const bins = seasonBins(weather, threshold);
  const targets = [...new Set([...CURVE_TARGETS_C, building.targetZoneAirTempC])].sort((a, b) => a - b);
  return (await cached(ctx, about, async () => targetCurve(targets.map((each) => atTarget(input, bins, each))))).result;
}

/** The building against another target. Zones with a target of their own keep it, and reports stay as counted. */
function atTarget(input: AssessmentInput, bins: readonly AnnualBin[] | null, targetC: number): AssessmentInput {
  return {
    ...input,
    targetZoneAirTempC: targetC,
    zones: input.zones.map((zone) => {
      if (zone.targetZoneAirTempC !== null || !zone.exposure) return zone;
      const exposure = exposureAtTarget(zone.exposure, targetC);
      const annual = exposure && bins ? annualise(exposure, bins) : null;
      return { ...zone, exposure, annual: annual?.status === "ok" ? annual.annual : null };
    }),
  };
}
