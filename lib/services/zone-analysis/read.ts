import { setImmediate as nextTurn } from "node:timers/promises";
import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listPoints, type PointRow } from "@/db/queries/points";
import { listZones, type ZoneRow } from "@/db/queries/zones";
import { type GroupOffset, groupOffsets } from "@/lib/trends/group-offsets";
import { type HeatedZone, type HeaterJumps, heaterJumps } from "@/lib/trends/heater-jumps";
import { cached, fingerprintOf } from "../cached";
import type { Context } from "../context";
import { type AnalysisTarget, analyseZone, type ZoneAnalysis } from "./analyse-zone";
import { type BuildingRecord, buildingRecord, type RecordPeriod, recordPeriod } from "./building-record";
import { readGroupedZone } from "./grouped-zone";

/** Raised when the same trends give another analysis. */
const VERSION = 4;

export type BuildingAnalysis = { zones: ZoneAnalysis[]; record: RecordPeriod | null };

/** A zone's analysis as it is kept: null when its air temperature is not recorded. */
export type KeptZoneAnalysis = { analysis: ZoneAnalysis | null };

export const zoneAnalysisSubject = (zoneId: number): string => `zone-analysis/${zoneId}`;

/**
 * What the trends say of every zone of a building. Each zone is kept by itself and worked out anew only when its own
 * trends, mapping or airflows change, or what all zones share: the record's period, the building's own points, occupied
 * hours, the target. How zones stand beside each other follows when any of them changed. Gives the event loop a turn
 * after each zone.
 */
export async function readBuildingAnalysis(
  ctx: Context,
  building: BuildingRow,
  seasonThresholdC: number,
): Promise<BuildingAnalysis> {
  const target: AnalysisTarget = { targetZoneAirTempC: building.targetZoneAirTempC, seasonThresholdC };
  const points = listPoints(ctx.db, building.id);
  const zones = listZones(ctx.db, building.id);
  const period = await recordPeriod(ctx, points);
  if (!period) return { zones: [], record: null };
  const fingerprints = await zoneFingerprints(ctx, building, { target, points, zones, period });
  const kept = new Map(ctx.results.list(building.id, "zone-analysis/").map((each) => [each.subject, each]));
  const whole = recordOnce(ctx, building);
  const analyses: ZoneAnalysis[] = [];
  const grouped = new Map<number, HeatedZone>();
  for (const [i, zone] of zones.entries()) {
    const subject = zoneAnalysisSubject(zone.id);
    const fingerprint = fingerprints[i] as string;
    const known = kept.get(subject);
    if (known?.restsOn === fingerprint) {
      const { analysis } = known.result as KeptZoneAnalysis;
      if (analysis) analyses.push(analysis);
      continue;
    }
    const done = await analyseZone(ctx, await whole(), zone, {
      ...target,
      targetZoneAirTempC: zone.targetZoneAirTempC ?? target.targetZoneAirTempC,
    });
    const result: KeptZoneAnalysis = { analysis: done?.analysis ?? null };
    ctx.results.save({ buildingId: building.id, subject, restsOn: fingerprint, workedOutAtMs: ctx.now, result });
    if (done) {
      analyses.push(done.analysis);
      grouped.set(zone.id, done.grouped);
    }
    ctx.onProgress?.({ done: i + 1, of: zones.length });
    await nextTurn();
  }
  const { offsets, jumps } = await besideEachOther(ctx, building, {
    target,
    zones,
    fingerprints,
    analyses,
    grouped,
    whole,
  });
  return {
    zones: analyses.map((analysis) => ({
      ...analysis,
      offset: offsets.find(({ zoneId }) => zoneId === analysis.zoneId) ?? null,
      heaterJumps: jumps.find(([zoneId]) => zoneId === analysis.zoneId)?.[1] ?? null,
    })),
    record: period,
  };
}

/** The building's record, read when the first zone needs it. */
function recordOnce(ctx: Context, building: BuildingRow): () => Promise<BuildingRecord> {
  let record: Promise<BuildingRecord | null> | undefined;
  return async () => {
    record ??= buildingRecord(ctx, building);
    const found = await record;
    if (!found) throw new Error("the record of the building was removed while it was analysed");
    return found;
  };
}

type Ground = { target: AnalysisTarget; points: readonly PointRow[]; zones: readonly ZoneRow[]; period: RecordPeriod };

/** What each zone's analysis rests on, in the order of the zones. */
async function zoneFingerprints(
  ctx: Context,
  building: BuildingRow,
  { target, points, zones, period }: Ground,
): Promise<string[]> {
  const revisions = await ctx.trends.rev(points.map((point) => point.id));
  const byZone = new Map<number | null, unknown[]>();
  points.forEach((point, i) => {
    const line = [point.id, point.kind, point.sampling, revisions[i]];
    byZone.set(point.zoneId, [...(byZone.get(point.zoneId) ?? []), line]);
  });
  const shared = fingerprintOf({
    version: VERSION,
    target,
    period,
    timeZone: building.timeZone,
    occupied: findOccupiedHours(ctx.db, building.id),
    points: byZone.get(null) ?? [],
  });
  return zones.map((zone) =>
    fingerprintOf([
      shared,
      zone.minimumAirflowM3ps,
      zone.designAirflowM3ps,
      zone.targetZoneAirTempC,
      byZone.get(zone.id) ?? [],
    ]),
  );
}

type Analysed = {
  target: AnalysisTarget;
  zones: readonly ZoneRow[];
  fingerprints: readonly string[];
  analyses: readonly ZoneAnalysis[];
  /** Zones that were read just now. */
  grouped: ReadonlyMap<number, HeatedZone>;
  whole: () => Promise<BuildingRecord>;
};

/** What shows only when the zones are looked at together: how each stands beside its neighbours, and jumps that they do not share. */
type BesideEachOther = { offsets: GroupOffset[]; jumps: [number, HeaterJumps][] };

async function besideEachOther(
  ctx: Context,
  building: BuildingRow,
  { target, zones, fingerprints, analyses, grouped, whole }: Analysed,
): Promise<BesideEachOther> {
  const fingerprint = fingerprintOf([fingerprints, zones.map((zone) => [zone.id, zone.floor])]);
  const about = { buildingId: building.id, subject: "zones-beside-each-other", fingerprint };
  const { result } = await cached<BesideEachOther>(ctx, about, async () => {
    const rows = new Map(zones.map((zone) => [zone.id, zone]));
    const members: HeatedZone[] = [];
    for (const analysis of analyses) {
      const zone = rows.get(analysis.zoneId) as ZoneRow;
      members.push(grouped.get(zone.id) ?? (await readGroupedZone(ctx, await whole(), zone, { analysis, target })));
      await nextTurn();
    }
    if (members.length === 0) return { offsets: [], jumps: [] };
    const jumps = heaterJumps(members, (await whole()).weekHours);
    return { offsets: groupOffsets(members), jumps: [...jumps] };
  });
  return result;
}
