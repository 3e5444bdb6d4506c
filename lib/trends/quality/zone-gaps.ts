import type { PointKind } from "../point-kind";
import { hoursOf, overlapSeconds, type QualityPoint, type Stretch } from "./quality-point";
import { sampleGaps } from "./sample-gaps";

/** Shorter gaps are counted by the coverage alone [h]. Judgement, no source. */
export const LEAST_GAP_HOURS = 3;
/** Two gaps are one event when this share of each lies in the other. Judgement, no source. */
const SAME_EVENT = 0.8;

/** A gap that one or more points of a zone have in common. */
export type SharedGap = Stretch & { kinds: PointKind[] };

/** Gaps of a zone's interval points of 3 h and more, those of several points at one time together; longest first. */
export function zoneGaps(points: readonly QualityPoint[]): SharedGap[] {
  const shared: SharedGap[] = [];
  for (const { kind, series } of points) {
    if (series.sampling !== "interval") continue;
    for (const gap of sampleGaps(series)) {
      if (hoursOf(gap) < LEAST_GAP_HOURS) break;
      const event = shared.find((each) => isSameEvent(each, gap));
      if (!event) shared.push({ ...gap, kinds: [kind] });
      else if (!event.kinds.includes(kind)) event.kinds.push(kind);
    }
  }
  return shared.sort((a, b) => hoursOf(b) - hoursOf(a));
}

export const isSameEvent = (a: Stretch, b: Stretch): boolean =>
  overlapSeconds(a, b) >= SAME_EVENT * 3600 * Math.max(hoursOf(a), hoursOf(b));
