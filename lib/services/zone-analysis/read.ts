import { setImmediate as nextTurn } from "node:timers/promises";
import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listPoints } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import { groupOffsets } from "@/lib/trends/group-offsets";
import { type HeatedZone, heaterJumps } from "@/lib/trends/heater-jumps";
import { cached, fingerprintOf } from "../cached";
import type { Context } from "../context";
import { type AnalysisTarget, analyseZone, type ZoneAnalysis } from "./analyse-zone";
import { buildingRecord } from "./building-record";

export type BuildingAnalysis = {
  zones: ZoneAnalysis[];
  record: { fromUtcSeconds: number; toUtcSeconds: number } | null;
};

/**
 * What the trends say of every zone of a building. Worked out anew only when trends, mapping, zones, occupied hours or
 * the target change; gives the event loop a turn after each zone.
 */
export async function readBuildingAnalysis(
  ctx: Context,
  building: BuildingRow,
  seasonThresholdC: number,
): Promise<BuildingAnalysis> {
  const target: AnalysisTarget = { targetZoneAirTempC: building.targetZoneAirTempC, seasonThresholdC };
  const points = listPoints(ctx.db, building.id);
  const zones = listZones(ctx.db, building.id);
  const fingerprint = fingerprintOf({
    version: 3,
    target,
    timeZone: building.timeZone,
    occupied: findOccupiedHours(ctx.db, building.id),
    zones: zones.map((zone) => [zone.id, zone.floor, zone.minimumAirflowM3ps, zone.designAirflowM3ps]),
    points: points.map((point) => [point.id, point.kind, point.zoneId, point.sampling]),
    revisions: await ctx.trends.rev(points.map((point) => point.id)),
  });
  const { result } = await cached(ctx, { buildingId: building.id, subject: "zone-analysis", fingerprint }, async () => {
    const record = await buildingRecord(ctx, building);
    if (!record) return { zones: [], record: null };
    const analyses: ZoneAnalysis[] = [];
    const grouped: HeatedZone[] = [];
    for (const zone of zones) {
      const done = await analyseZone(ctx, record, zone, target);
      await nextTurn();
      if (!done) continue;
      analyses.push(done.analysis);
      grouped.push(done.grouped);
    }
    const offsets = new Map(groupOffsets(grouped).map((each) => [each.zoneId, each]));
    const jumps = heaterJumps(grouped, record.weekHours);
    for (const analysis of analyses) {
      analysis.offset = offsets.get(analysis.zoneId) ?? null;
      analysis.heaterJumps = jumps.get(analysis.zoneId) ?? null;
    }
    const { fromUtcSeconds, toUtcSeconds } = record;
    return { zones: analyses, record: { fromUtcSeconds, toUtcSeconds } };
  });
  return result;
}
