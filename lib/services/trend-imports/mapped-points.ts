import { convertToStored } from "@/lib/importers/trend-csv/convert-to-stored";
import { Scratch } from "@/lib/importers/trend-csv/scratch";
import type { ReadProgress, TrendFileResult, TrendPart } from "@/lib/importers/trend-csv/trend-file";
import { FILE_UNITS, type TrendInspection, type TrendPointSummary } from "@/lib/importers/trend-csv/trend-file";
import type { PointKind } from "@/lib/trends/point-kind";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { ServiceError } from "../errors";
import type { CollectedFindings } from "./collect-findings";
import type { PointChoice, RunAnswers } from "./run-input";

export type MappedPoint = { point: TrendPointSummary; choice: Extract<PointChoice, { skip: false }> };

/** A point of the store that readings of a file go to. */
export type Series = { id: number; kind: PointKind };

/** The points to be stored with their choices. Refuses before anything is written when a unit cannot be. */
export function mappedPoints(inspection: TrendInspection, { points }: RunAnswers): MappedPoint[] {
  return inspection.points.flatMap((point) => {
    const choice = points[point.name];
    if (!choice || choice.skip) return [];
    const none = new Float64Array(0);
    const unit = point.unit ?? FILE_UNITS.find((known) => known === choice.unit) ?? null;
    const verdict = convertToStored(
      { ...point, unit, stateNames: point.states, tsUtcSeconds: none, values: none },
      choice.kind,
    );
    if (verdict.status !== "ok") throw new ServiceError("invalid", verdict.sentence);
    return { point, choice };
  });
}

type Noting = {
  findings: CollectedFindings;
  /** After each part has been taken. Throw to stop. */
  onPart(progress: ReadProgress): void;
  onEnd(result: TrendFileResult): void;
};

/** Readings as the store holds them, part by part. What the limits of a kind leave out is added to the findings. */
export async function* slicesOf(
  parts: AsyncGenerator<TrendPart, TrendFileResult>,
  series: ReadonlyMap<string, Series>,
  { findings, onPart, onEnd }: Noting,
): AsyncGenerator<TrendSlice> {
  const scratch = new Scratch();
  for (;;) {
    const next = await parts.next();
    if (next.done) {
      onEnd(next.value);
      return;
    }
    for (const point of next.value.points) {
      const target = series.get(point.name);
      if (!target) continue;
      const stored = convertToStored(point, target.kind, point.unit, scratch);
      if (stored.status !== "ok") throw new ServiceError("invalid", stored.sentence);
      findings.add(stored.findings);
      if (stored.ts.length > 0) yield { series: target.id, ts: stored.ts, v: stored.v, decimals: stored.decimals };
    }
    onPart(next.value.progress);
  }
}
