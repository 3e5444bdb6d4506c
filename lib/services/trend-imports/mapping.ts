import { type ImportRunRow, listImportRuns } from "@/db/queries/import-runs";
import { listPoints, type PointRow } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import { type MappingProposal, proposeMapping } from "@/lib/importers/trend-csv/propose-mapping";
import type { TrendAsk, TrendInspection, TrendPointSummary } from "@/lib/importers/trend-csv/trend-file";
import type { PointKind } from "@/lib/trends/point-kind";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";

/** One point of the waiting files, with what is proposed for it or what was settled before. */
export type MappingLine = {
  name: string;
  /** Files that hold it, in the order they came. */
  runIds: number[];
  summary: TrendPointSummary;
  proposal: MappingProposal;
  /** How the point was mapped by an earlier import. */
  known: { kind: PointKind; zoneId: number | null; fileUnit: string } | null;
  /** The question about its unit, when the file does not say it. */
  unitAsk: TrendAsk | null;
};

export type MappingTask = {
  lines: MappingLine[];
  /** Questions about a whole file: order of day and month, clock, value column. */
  fileAsks: { runId: number; fileName: string; ask: TrendAsk }[];
  waiting: ImportRunRow[];
};

export const inspectionOf = (run: ImportRunRow): TrendInspection => run.inspection as TrendInspection;

/** What a person has to confirm before the waiting trend files are imported. */
export function readMappingTask(ctx: Context, buildingId: number): MappingTask {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const zones = listZones(ctx.db, buildingId);
  const known = new Map(listPoints(ctx.db, buildingId).map((point) => [point.externalName, point]));
  const waiting = listImportRuns(ctx.db, buildingId)
    .filter((run) => run.kind === "trends" && run.state === "waiting")
    .reverse();
  const lines = new Map<string, MappingLine>();
  const fileAsks: MappingTask["fileAsks"] = [];
  for (const run of waiting) {
    const { points, ask } = inspectionOf(run);
    for (const each of ask)
      if (each.what !== "unit") fileAsks.push({ runId: run.id, fileName: run.fileName, ask: each });
    for (const summary of points) {
      const line = lines.get(summary.name);
      if (line) {
        line.runIds.push(run.id);
        continue;
      }
      lines.set(summary.name, {
        name: summary.name,
        runIds: [run.id],
        summary,
        proposal: proposeMapping(summary.name, zones),
        known: knownMapping(known.get(summary.name)),
        unitAsk: ask.find((each) => each.what === "unit" && each.points?.includes(summary.name)) ?? null,
      });
    }
  }
  return { lines: [...lines.values()].sort((a, b) => a.name.localeCompare(b.name, "en")), fileAsks, waiting };
}

function knownMapping(point: PointRow | undefined): MappingLine["known"] {
  return point ? { kind: point.kind, zoneId: point.zoneId, fileUnit: point.fileUnit } : null;
}
