import type { PointKind } from "../point-kind";
import type { Sampling } from "../samples";
import { hoursOf, overlapSeconds, type QualityPoint, type Stretch } from "./quality-point";
import { sampleGaps } from "./sample-gaps";

/** Shorter gaps are counted by the coverage alone [h]. Judgement, no source. */
export const LEAST_GAP_HOURS = 3;
/** Two gaps are one event when this share of each lies in the other. Judgement, no source. */
const SAME_EVENT = 0.8;

/** A gap that one or more points of a zone have in common. */
export type SharedGap = Stretch & { kinds: PointKind[] };

/** Gaps of a zone's interval points of 3 h and more, those of several points at one time together; longest first. */
export const zoneGaps = (points: readonly QualityPoint[]): SharedGap[] =>
  gapEvents(
    points.filter(({ series }) => series.sampling === "interval"),
    LEAST_GAP_HOURS,
  ).events;

/** A gap of one or more points that are sampled alike. */
export type GapEvent = SharedGap & { sampling: Sampling; hours: number };

/** Gaps of points of some hours and more, those at one time together, longest first; and the number of shorter ones. */
export function gapEvents(
  points: readonly QualityPoint[],
  leastHours: number,
): { events: GapEvent[]; shorter: number } {
  const events: GapEvent[] = [];
  let shorter = 0;
  for (const { kind, series } of points) {
    const { sampling } = series;
    for (const gap of sampleGaps(series)) {
      const hours = hoursOf(gap);
      const event = events.find((each) => each.sampling === sampling && isSameEvent(each, gap));
      if (hours < leastHours) shorter++;
      else if (!event) events.push({ ...gap, hours, sampling, kinds: [kind] });
      else if (!event.kinds.includes(kind)) event.kinds.push(kind);
    }
  }
  return { events: events.sort((a, b) => b.hours - a.hours), shorter };
}

export const isSameEvent = (a: Stretch, b: Stretch): boolean =>
  overlapSeconds(a, b) >= SAME_EVENT * 3600 * Math.max(hoursOf(a), hoursOf(b));
