import type { BuildingRow } from "@/db/queries/buildings";
import { diagnoseZone, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import type { Context } from "../context";
import { collectEvidence } from "./collect-evidence";
import type { BuildingAnalysis } from "./read";

/** What keeps each zone cold or hot, by zone id. Zones without a record have no diagnosis. */
export async function diagnoseZones(
  ctx: Context,
  building: BuildingRow,
  analysis: BuildingAnalysis,
  seasonThresholdC: number,
): Promise<Map<number, ZoneDiagnosis>> {
  const evidence = await collectEvidence(ctx, building, analysis, seasonThresholdC);
  return new Map([...evidence].map(([zoneId, zone]) => [zoneId, diagnoseZone(zone)]));
}
