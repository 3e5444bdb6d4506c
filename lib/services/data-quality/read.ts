import { listPoints } from "@/db/queries/points";
import { findZone, listZones, type ZoneRow } from "@/db/queries/zones";
import type { Finding } from "@/lib/findings/finding";
import { spanCoverage } from "@/lib/trends/daily/span-means";
import { POINT_KINDS, type PointKind } from "@/lib/trends/point-kind";
import type { QualityPoint } from "@/lib/trends/quality/quality-point";
import { type GapEvent, gapEvents } from "@/lib/trends/quality/zone-gaps";
import { type QualityProblem, type ZoneResult, zoneProblems } from "@/lib/trends/quality/zone-problems";
import type { PointCover } from "@/lib/trends/quality/zone-quality";
import type { Sampling } from "@/lib/trends/samples";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import type { ResultKind } from "../kept/result-kind";
import { upToDate } from "../kept/work-out";
import { type CostOfOvercooling, readCostOfOvercooling } from "../overcooling/assess";
import { buildingRecord } from "../zone-analysis/building-record";
import { diagnoseZones } from "../zone-analysis/diagnose";
import { type BuildingAnalysis, readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "../zones/overview";
import { type ImportRemark, importRemarks } from "./import-remarks";
import { type LookedOver, lookOverBuilding, qualityFrame, zonePoints } from "./look-over";

export type ZoneDataQuality = {
  zone: Pick<ZoneRow, "id" | "code" | "name" | "floor">;
  points: PointCover[];
  problems: QualityProblem[];
  remarks: ImportRemark[];
};

export type BuildingDataQuality = {
  record: LookedOver["record"];
  zones: ZoneDataQuality[];
  /** Of the building as a whole: what hit all zones at once, and its own points. */
  findings: Finding[];
  buildingPoints: PointCover[];
  /** Of imports that concern no zone. */
  remarks: ImportRemark[];
};

/** How good the records of every zone are, and what their problems stop. */
export const QUALITY: ResultKind<BuildingDataQuality> = {
  name: "data-quality",
  version: 2,
  inputs: [
    "trends",
    "mapping",
    "zones",
    "devices",
    "reports",
    "building",
    "assumptions",
    "weather",
    "bills",
    "imports",
  ],
  workOut: (ctx, building) => readBuildingDataQuality(ctx, building.id),
};

/** The same for one who waits: worked out here where it has to be. */
export async function readBuildingDataQuality(ctx: Context, buildingId: number): Promise<BuildingDataQuality> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const thresholdC = seasonThresholdC(ctx, buildingId);
  const looked = await lookOverBuilding(ctx, building, thresholdC);
  const analysis = await readBuildingAnalysis(ctx, building, thresholdC);
  const diagnoses = await diagnoseZones(ctx, building, analysis, thresholdC);
  const { assessment } = await readCostOfOvercooling(ctx, buildingId);
  const analyses = new Map(analysis.zones.map((each) => [each.zoneId, each]));
  const qualities = new Map(looked.zones.map((each) => [each.zoneId, each]));
  const zones = listZones(ctx.db, buildingId);
  const remarks = importRemarks(ctx, buildingId, zones, listPoints(ctx.db, buildingId));
  const buildingKinds = looked.buildingPoints.map(({ kind }) => kind);
  return {
    record: looked.record,
    findings: [...looked.findings, ...outdoorFindings(analysis)],
    buildingPoints: looked.buildingPoints,
    remarks: remarks.get(null) ?? [],
    zones: zones.map(({ id, code, name, floor }) => {
      const quality = qualities.get(id) ?? { zoneId: id, points: [], presence: [], findings: [] };
      const result = {
        analysis: analyses.get(id) ?? null,
        diagnosis: diagnoses.get(id) ?? null,
        ...costStanding(assessment, id, code),
      };
      return {
        zone: { id, code, name, floor },
        points: quality.points,
        problems: zoneProblems(quality, result, buildingKinds),
        remarks: remarks.get(id) ?? [],
      };
    }),
  };
}

/** What the zones' analyses say of the building's outdoor air: once, as it stands for the zone that it hits most. */
function outdoorFindings({ zones }: BuildingAnalysis): Finding[] {
  const said = zones.flatMap(({ exposure }) => exposure.findings);
  const gaps = said.filter(({ code }) => code === "outdoor-gaps");
  gaps.sort((a, b) => Number(b.evidence.leftOutHours) - Number(a.evidence.leftOutHours));
  return [...said.filter(({ code }) => code === "no-outdoor-record").slice(0, 1), ...gaps.slice(0, 1)];
}

/** Whether the cost rests on measured zones and leaves this one out, and what it says of the zone's record. */
function costStanding(
  assessment: CostOfOvercooling["assessment"],
  zoneId: number,
  code: string,
): { inCost: ZoneResult["inCost"]; costFindings: Finding[] } {
  if (assessment.status !== "ok" || !assessment.zones.some((each) => each.measured))
    return { inCost: null, costFindings: [] };
  const line = assessment.zones.find((each) => each.zoneId === zoneId);
  const ofRecord = ["zone-air-implausible", "record-without-hours", "record-of-another-target"];
  return {
    inCost: line?.measured ? "measured" : "left-out",
    costFindings: assessment.findings.filter(
      (finding) => ofRecord.includes(finding.code) && finding.evidence.zone === code,
    ),
  };
}

/** One point's days: share of the expected samples by local day. */
export type PointDays = {
  pointId: number;
  kind: PointKind;
  name: string;
  sampling: Sampling;
  shares: number[];
};

export type ZoneDataQualityDetail = ZoneDataQuality & {
  building: Pick<BuildingDataQuality, "record" | "findings">;
  /** Day number of the first day of the record, and the days of it; none without a record. */
  firstDay: number;
  dayCount: number;
  /** By point, in the order of the point kinds. */
  days: PointDays[];
  /** Gaps of an hour and more, longest first, and how many are shorter. */
  gaps: GapEvent[];
  shorterGaps: number;
};

/** Shorter gaps of a zone are counted, not listed [h]. */
const LEAST_LISTED_HOURS = 1;

/** One zone's data quality with its calendar and gaps. Its part is the zone's id. */
export const ZONE_QUALITY: ResultKind<ZoneDataQualityDetail> = {
  name: "zone-quality",
  version: 2,
  inputs: QUALITY.inputs,
  workOut: (ctx, building, part) => readZoneDataQuality(ctx, building.id, Number(part)),
};

/** The same for one who waits, read from the samples as they stand. */
export async function readZoneDataQuality(
  ctx: Context,
  buildingId: number,
  zoneId: number,
): Promise<ZoneDataQualityDetail> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  if (!findZone(ctx.db, buildingId, zoneId)) throw new ServiceError("not-found", "This zone does not exist.");
  const { result: all } = await upToDate(ctx, building, QUALITY);
  const own = all.zones.find((each) => each.zone.id === zoneId) as ZoneDataQuality;
  const record = await buildingRecord(ctx, building);
  const about = { building: { record: all.record, findings: all.findings } };
  if (!record) return { ...own, ...about, firstDay: 0, dayCount: 0, days: [], gaps: [], shorterGaps: 0 };
  const { days } = qualityFrame(record, building.timeZone);
  // The first and the last day count as far as the record goes.
  const edges = days.edges.map((edge) => Math.min(record.toUtcSeconds, Math.max(record.fromUtcSeconds, edge)));
  const points = byKindOrder(await zonePoints(ctx, record, zoneId));
  const { events, shorter } = gapEvents(points, LEAST_LISTED_HOURS);
  return {
    ...own,
    ...about,
    firstDay: days.firstDay,
    dayCount: days.count,
    gaps: events,
    shorterGaps: shorter,
    days: points.map(({ pointId, kind, name, series }) => ({
      pointId,
      kind,
      name,
      sampling: series.sampling,
      shares: [...spanCoverage(series, edges)],
    })),
  };
}

const byKindOrder = (points: readonly QualityPoint[]): QualityPoint[] =>
  [...points].sort((a, b) => POINT_KINDS.indexOf(a.kind) - POINT_KINDS.indexOf(b.kind));
