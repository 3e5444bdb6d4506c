import type { Finding } from "@/lib/findings/finding";
import type { LocalDays } from "@/lib/time/local-days";
import { spanCoverage, spanMeans } from "../daily/span-means";
import { type TrendPresence, trendPresence } from "../diagnosis/trend-presence";
import { POINT_KINDS, type PointKind } from "../point-kind";
import type { ZoneGrids } from "../zone-grids";
import { oddHours } from "./clock-change-hours";
import { type OffsetChange, shiftsAtClockChanges } from "./clock-changes";
import type { LocalClock } from "./daily-profile";
import { hoursOf, type QualityPoint, type Stretch } from "./quality-point";
import { coverOf, recordOf, SHORT_RECORD } from "./record-cover";
import { type ScheduleTrend, scheduleTrend } from "./schedule-trend";
import { type StuckRun, smallestStep, unchangedRuns } from "./stuck-runs";
import { unitSwitches } from "./unit-switches";
import { unlikelyValues } from "./value-limits";
import { type SharedGap, zoneGaps } from "./zone-gaps";

/** What the zones of a building share when their records are looked over. */
export type QualityFrame = {
  /** The record of the building, from its first to its last zone air sample. */
  record: Stretch;
  days: LocalDays;
  clock: LocalClock;
  changes: readonly OffsetChange[];
  dayAt: (utcSeconds: number) => number;
  /** Whether a local day has occupied hours: only such days run by the schedule. */
  countsDay: (day: number) => boolean;
};

export type PointCover = { pointId: number; kind: PointKind; name: string; share: number; samples: number };

/** What a zone's own samples say of their quality, and what its neighbours are needed for. */
export type ZoneQualityParts = {
  points: PointCover[];
  presence: TrendPresence;
  findings: Finding[];
  gaps: SharedGap[];
  unchanged: { kind: PointKind; ownStepK: number | null; runs: StuckRun[] }[];
  /** Mean day of the trend that shows the time schedule, and which it is. */
  schedule: Pick<ScheduleTrend, "kind" | "profile"> | null;
};

const SENSORS: readonly PointKind[] = ["zone-air-temp", "discharge-air-temp", "supply-air-temp", "outdoor-air-temp"];
const INDOOR: readonly PointKind[] = ["zone-air-temp", "cooling-setpoint", "heating-setpoint"];

/** Looks over the points of one zone. `season` is the cooling-season mask of the grids. */
export function zoneQuality(
  points: readonly QualityPoint[],
  grids: ZoneGrids,
  season: Uint8Array,
  frame: QualityFrame,
): ZoneQualityParts {
  const findings: Finding[] = [];
  const air = points.find((point) => point.kind === "zone-air-temp");
  const airRecord = air ? recordOf(air.series) : null;
  for (const point of points) {
    findings.push(...shortRecord(point, point === air ? null : airRecord, frame.record));
    findings.push(...valueFindings(point, frame));
  }
  findings.push(...oddHourFindings(points, frame.changes));
  const schedule = scheduleTrend(grids, frame);
  if (schedule) findings.push(...changeFindings(schedule, frame));
  return {
    points: points
      .map((point) => coverOfPoint(point, frame))
      .sort((a, b) => POINT_KINDS.indexOf(a.kind) - POINT_KINDS.indexOf(b.kind)),
    presence: trendPresence(grids, season),
    findings,
    gaps: zoneGaps(points),
    unchanged: points.flatMap(({ kind, series }) => {
      const runs = SENSORS.includes(kind) ? unchangedRuns(series) : [];
      return runs.length > 0 ? { kind, ownStepK: smallestStep(series), runs } : [];
    }),
    // Without its values: those of hundreds of zones would not fit.
    schedule: schedule && { kind: schedule.kind, profile: schedule.profile },
  };
}

/** Share of the building's record for which a point has samples: the mean of its days, weighted by their length. */
export function coverOfPoint({ pointId, kind, name, series }: QualityPoint, { record }: QualityFrame): PointCover {
  const [share = 0] = spanCoverage(series, Float64Array.of(record.fromUtcSeconds, record.toUtcSeconds));
  return { pointId, kind, name, share, samples: series.samples.ts.length };
}

function shortRecord({ kind, series }: QualityPoint, air: Stretch | null, building: Stretch): Finding[] {
  const own = recordOf(series);
  const { share, coveredDays, ofDays } = own ? coverOf(own, air ?? building) : { share: 1, coveredDays: 0, ofDays: 0 };
  if (!own || share >= SHORT_RECORD) return [];
  return [
    {
      code: "trend-short",
      severity: "caution",
      evidence: { point: kind, ...own, coveredDays, ofDays, comparedWith: air ? "zone-air" : "building" },
    },
  ];
}

function valueFindings({ kind, series }: QualityPoint, frame: QualityFrame): Finding[] {
  const findings: Finding[] = [];
  const unlikely = unlikelyValues(kind, series);
  if (unlikely) findings.push({ code: "values-unlikely", severity: "caution", evidence: { point: kind, ...unlikely } });
  const means = INDOOR.includes(kind) ? spanMeans(series, frame.days.edges, { leastCoverage: 0.25 }) : [];
  const [first, ...more] = unitSwitches(means.map((mean) => mean.value));
  if (first) {
    const { day, beforeC, afterC, to } = first;
    const evidence = { point: kind, atUtcSeconds: frame.days.edges[day] as number, beforeC, afterC, to };
    findings.push({ code: "unit-switched", severity: "caution", evidence: { ...evidence, times: more.length + 1 } });
  }
  return findings;
}

function oddHourFindings(points: readonly QualityPoint[], changes: readonly OffsetChange[]): Finding[] {
  const events = new Map<string, Finding & { evidence: { points: PointKind[] } }>();
  for (const { kind, series } of points) {
    for (const { fault, pass, atUtcSeconds, bySeconds } of oddHours(series, changes)) {
      const key = `${fault} ${pass} ${atUtcSeconds}`;
      const event = events.get(key);
      if (event) event.evidence.points.push(kind);
      else
        events.set(key, {
          code: `clock-change-hour-${fault}`,
          severity: "note",
          evidence: { points: [kind], pass, atUtcSeconds, bySeconds },
        });
    }
  }
  return [...events.values()];
}

function changeFindings({ kind, values }: ScheduleTrend, frame: QualityFrame): Finding[] {
  return shiftsAtClockChanges(values, frame.clock, frame.changes, frame).map(({ atUtcSeconds, bySeconds, lag }) => ({
    code: "clock-change-not-followed",
    severity: "caution",
    evidence: { point: kind, atUtcSeconds, bySeconds, ...lag },
  }));
}

/** A gap as a finding: a day and more of the zone's own is worth a caution. Judgement, no source. */
export const gapFinding = (gap: SharedGap, scope: "zone" | "building"): Finding => ({
  code: "samples-missing",
  severity: scope === "zone" && hoursOf(gap) >= 24 ? "caution" : "note",
  evidence: {
    points: gap.kinds,
    fromUtcSeconds: gap.fromUtcSeconds,
    toUtcSeconds: gap.toUtcSeconds,
    hours: hoursOf(gap),
    scope,
  },
});
