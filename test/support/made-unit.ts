import type { ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import type { PointSeries } from "@/lib/trends/samples";
import type { ZoneGrids } from "@/lib/trends/zone-grids";
import { scenarioEvidence, scenarioGrids } from "./zone-scenario";

type At = Parameters<typeof scenarioGrids>[0];

/** A compressor that runs `onMinutes` of every half hour, sampled on change of value, and its share in each interval. */
export function cycling(onMinutes: number, at: At): { grids: ZoneGrids; stage: PointSeries } {
  const grids = scenarioGrids((now) => ({ coolingStage: onMinutes / 30, ...at(now) }));
  const ts: number[] = [];
  const v: number[] = [];
  for (let i = 0; i < grids.grid.count; i += 2) {
    if (grids.occupied[i] !== 1) continue;
    const begins = grids.grid.startUtcSeconds + i * 900;
    ts.push(begins, begins + onMinutes * 60);
    v.push(1, 0);
  }
  const samples = { ts: Float64Array.from(ts), v: Int32Array.from(v), decimals: 0 };
  return { grids, stage: { samples, sampling: "change-of-value" } };
}

/** A zone with a unit of its own and no box. */
export const single = (onMinutes: number, at: At): ZoneEvidence => {
  const { grids, stage } = cycling(onMinutes, at);
  return scenarioEvidence(
    { ...grids, airflowM3ps: null, reheatValvePct: null, damperPct: null },
    { singleZone: true },
    stage,
  );
};
