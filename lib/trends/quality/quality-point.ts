import type { PointKind } from "../point-kind";
import type { PointSeries } from "../samples";

/** A trend point with its samples, as the checks of a record's quality look at it. */
export type QualityPoint = { pointId: number; kind: PointKind; name: string; series: PointSeries };

/** A stretch of time in UTC seconds, its end not included. */
export type Stretch = { fromUtcSeconds: number; toUtcSeconds: number };

export const hoursOf = (stretch: Stretch): number => (stretch.toUtcSeconds - stretch.fromUtcSeconds) / 3600;

/** Seconds that two stretches have in common. */
export const overlapSeconds = (a: Stretch, b: Stretch): number =>
  Math.max(0, Math.min(a.toUtcSeconds, b.toUtcSeconds) - Math.max(a.fromUtcSeconds, b.fromUtcSeconds));
