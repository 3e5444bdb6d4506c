import { listImportRuns } from "@/db/queries/import-runs";
import type { PointRow } from "@/db/queries/points";
import type { ZoneRow } from "@/db/queries/zones";
import type { Severity } from "@/lib/findings/finding";
import { proposeMapping } from "@/lib/importers/trend-csv/propose-mapping";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import type { Context } from "../context";

/** Something an import said of a file or of one of its points. */
export type ImportRemark = {
  runId: number;
  fileName: string;
  startedAtMs: number;
  severity: Severity;
  sentence: string;
};

/** Remarks of the trend imports by zone id; under null those of no zone: of the building's points, or of files that name none. */
export type ImportRemarks = Map<number | null, ImportRemark[]>;

/**
 * What imports found about the points of each zone, newest first: cautions of files that were read, by point, and files
 * that were refused, by the zone that their name or their points' names propose. Of a file brought in again the last reading counts.
 */
export function importRemarks(
  ctx: Context,
  buildingId: number,
  zones: readonly ZoneRow[],
  points: readonly PointRow[],
): ImportRemarks {
  const zoneOfPoint = new Map(points.map((point) => [point.externalName, point.zoneId]));
  const remarks: ImportRemarks = new Map();
  const seen = new Set<string>();
  for (const run of listImportRuns(ctx.db, buildingId)) {
    if (run.kind !== "trends" || (run.state !== "done" && run.state !== "refused") || seen.has(run.fileName)) continue;
    seen.add(run.fileName);
    const { findings = [], points: inFile = [] } = (run.inspection ?? {}) as Partial<TrendInspection>;
    const remark = (severity: Severity, sentence: string): ImportRemark => ({
      runId: run.id,
      fileName: run.fileName,
      startedAtMs: run.startedAtMs,
      severity,
      sentence,
    });
    const add = (zoneIds: Iterable<number | null>, line: ImportRemark): void => {
      for (const zoneId of zoneIds) remarks.set(zoneId, [...(remarks.get(zoneId) ?? []), line]);
    };
    if (run.state === "refused") {
      const names = inFile.length > 0 ? inFile.map(({ name }) => name) : [stem(run.fileName)];
      add(
        new Set(names.map((name) => proposedZone(name, zones))),
        remark("caution", `Nothing was taken from this file. ${run.message}`),
      );
      continue;
    }
    for (const finding of findings) {
      if (finding.severity === "note") continue;
      const about = finding.points ?? (finding.point === undefined ? inFile.map(({ name }) => name) : [finding.point]);
      const placed = about.map((name) => zoneOfPoint.get(name)).filter((each) => each !== undefined);
      add(
        new Set(placed.length > 0 ? placed : about.map((name) => proposedZone(name, zones))),
        remark(finding.severity, finding.sentence),
      );
    }
  }
  return remarks;
}

const proposedZone = (name: string, zones: readonly ZoneRow[]): number | null => proposeMapping(name, zones).zoneId;

const stem = (fileName: string): string => fileName.replace(/\.[^.]+$/, "");
