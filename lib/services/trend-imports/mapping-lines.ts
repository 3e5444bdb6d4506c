import type { Queryable } from "@/db/client";
import { type ImportRunRow, lastPointChoices } from "@/db/queries/import-runs";
import { listPoints, type PointRow } from "@/db/queries/points";
import { listZones, type ZoneRow } from "@/db/queries/zones";
import {
  type MappedPoint,
  type MappingProposal,
  proposalBasis,
  proposeByBasis,
} from "@/lib/importers/trend-csv/propose-mapping";
import type { TrendAsk, TrendInspection, TrendPointSummary } from "@/lib/importers/trend-csv/trend-file";
import { naturalCompare } from "@/lib/order/natural-compare";
import type { PointKind } from "@/lib/trends/point-kind";

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
  /** A point of the building that has the place proposed here and is in none of the files: perhaps its former name. */
  continues: string | null;
};

/** What lines are made from, read once for many files. */
export type LineBasis = { zones: ZoneRow[]; points: PointRow[]; last: Map<string, "imported" | "left-out"> };

/** For the points of some files. */
export function readLineBasis(
  db: Queryable,
  buildingId: number,
  files: readonly Pick<TrendInspection, "points">[],
): LineBasis {
  return {
    zones: listZones(db, buildingId),
    points: listPoints(db, buildingId),
    last: lastPointChoices(
      db,
      buildingId,
      files.flatMap(({ points }) => points.map(({ name }) => name)),
    ),
  };
}

export const inspectionOf = (run: Pick<ImportRunRow, "inspection">): TrendInspection =>
  run.inspection as TrendInspection;

/** The points of the files, each once, by name. `entered` are zones given by hand just now. */
export function linesOf(
  { zones, points, last }: LineBasis,
  waiting: readonly Pick<ImportRunRow, "id" | "inspection">[],
  entered: readonly MappedPoint[] = [],
): MappingLine[] {
  const known = new Map(points.map((point) => [point.externalName, point]));
  const names = waiting.flatMap((run) => inspectionOf(run).points.map((point) => point.name));
  const mapped = points.flatMap(({ externalName: name, zoneId }) => (zoneId === null ? [] : { name, zoneId }));
  const enteredNames = new Set(entered.map((point) => point.name));
  const basis = proposalBasis(zones, [...mapped.filter(({ name }) => !enteredNames.has(name)), ...entered], names);
  const coming = new Set(names);
  const holders = new Map<string, string>();
  for (const { kind, zoneId, externalName } of points)
    if (zoneId !== null && !coming.has(externalName)) holders.set(`${kind}/${zoneId}`, externalName);
  const lines = new Map<string, MappingLine>();
  for (const run of waiting) {
    const { points: summaries, ask } = inspectionOf(run);
    const unitAsks = unitAsksByPoint(ask);
    for (const summary of summaries) {
      const { name } = summary;
      const unitAsk = unitAsks.get(name) ?? null;
      const line = lines.get(name);
      if (line) {
        line.runIds.push(run.id);
        line.unitAsk ??= unitAsk;
        continue;
      }
      const proposal = proposeByBasis(name, basis, summary.unit);
      const settled = knownMapping(known.get(name));
      lines.set(name, {
        name,
        runIds: [run.id],
        summary,
        proposal,
        known: settled,
        leftOutBefore: last.get(name) === "left-out",
        unitAsk,
        continues: settled ? null : (holders.get(`${proposal.kind}/${proposal.zoneId}`) ?? null),
      });
    }
  }
  return [...lines.values()].sort(byName);
}

const byName = (a: MappingLine, b: MappingLine): number => naturalCompare(a.name, b.name);

function unitAsksByPoint(asks: readonly TrendAsk[]): Map<string, TrendAsk> {
  const units = asks.filter((ask) => ask.what === "unit");
  return new Map(units.flatMap((ask) => (ask.points ?? []).map((name) => [name, ask] as const)));
}

function knownMapping(point: PointRow | undefined): MappingLine["known"] {
  return point ? { kind: point.kind, zoneId: point.zoneId, fileUnit: point.fileUnit } : null;
}
