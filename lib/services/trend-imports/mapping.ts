import { type ImportRunRow, listImportRuns } from "@/db/queries/import-runs";
import { listPoints, type PointRow } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import { type MappingProposal, proposeMapping } from "@/lib/importers/trend-csv/propose-mapping";
import type { TrendAsk, TrendInspection, TrendPointSummary } from "@/lib/importers/trend-csv/trend-file";
import type { PointKind } from "@/lib/trends/point-kind";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import type { RunAnswers } from "./run-input";

/** One point of the files, with what is proposed for it or what was settled before. */
export type MappingLine = {
  name: string;
  /** Files that hold it, in the order they came. */
  runIds: number[];
  summary: TrendPointSummary;
  proposal: MappingProposal;
  /** How the point was mapped by an earlier import. */
  known: { kind: PointKind; zoneId: number | null; fileUnit: string } | null;
  /** True when the last import that held the point was told to leave it out. */
  leftOutBefore: boolean;
  /** The question about its unit, when a file does not say it. */
  unitAsk: TrendAsk | null;
};

export type MappingTask = {
  lines: MappingLine[];
  /** Questions about a whole file: order of day and month, clock, value column. */
  fileAsks: { runId: number; fileName: string; ask: TrendAsk }[];
  waiting: ImportRunRow[];
};

export const inspectionOf = (run: ImportRunRow): TrendInspection => run.inspection as TrendInspection;

/** What a person has to confirm before the waiting trend files, or those of the given runs, are imported. */
export function readMappingTask(ctx: Context, buildingId: number, runIds?: readonly number[]): MappingTask {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const runs = listImportRuns(ctx.db, buildingId).filter((run) => run.kind === "trends");
  const waiting = runs
    .filter((run) => (runIds ? runIds.includes(run.id) : run.state === "waiting"))
    .sort((a, b) => a.id - b.id);
  const fileAsks = waiting.flatMap((run) =>
    inspectionOf(run)
      .ask.filter((ask) => ask.what !== "unit")
      .map((ask) => ({ runId: run.id, fileName: run.fileName, ask })),
  );
  return { lines: linesOf(ctx, buildingId, waiting, lastChoices(runs)), fileAsks, waiting };
}

function linesOf(
  ctx: Context,
  buildingId: number,
  waiting: readonly ImportRunRow[],
  last: ReadonlyMap<string, "imported" | "left-out">,
): MappingLine[] {
  const zones = listZones(ctx.db, buildingId);
  const known = new Map(listPoints(ctx.db, buildingId).map((point) => [point.externalName, point]));
  const lines = new Map<string, MappingLine>();
  for (const run of waiting) {
    const { points, ask } = inspectionOf(run);
    for (const summary of points) {
      const { name } = summary;
      const unitAsk = ask.find((each) => each.what === "unit" && each.points?.includes(name)) ?? null;
      const line = lines.get(name);
      if (line) {
        line.runIds.push(run.id);
        line.unitAsk ??= unitAsk;
        continue;
      }
      lines.set(name, {
        name,
        runIds: [run.id],
        summary,
        proposal: proposeMapping(name, zones),
        known: knownMapping(known.get(name)),
        leftOutBefore: last.get(name) === "left-out",
        unitAsk,
      });
    }
  }
  return [...lines.values()].sort((a, b) => a.name.localeCompare(b.name, "en"));
}

/** What was last decided of each point, by its name; undecided ones are as if they had never come. */
function lastChoices(newestFirst: readonly ImportRunRow[]): Map<string, "imported" | "left-out"> {
  const last = new Map<string, "imported" | "left-out">();
  for (const { answers } of newestFirst) {
    for (const [name, choice] of Object.entries((answers as RunAnswers | null)?.points ?? {})) {
      if (last.has(name) || (choice.skip && choice.undecided)) continue;
      last.set(name, choice.skip ? "left-out" : "imported");
    }
  }
  return last;
}

function knownMapping(point: PointRow | undefined): MappingLine["known"] {
  return point ? { kind: point.kind, zoneId: point.zoneId, fileUnit: point.fileUnit } : null;
}
