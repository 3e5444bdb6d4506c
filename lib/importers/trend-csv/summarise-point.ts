import { formatUtc } from "./format-utc";
import type { Rhythm } from "./gaps";
import type { PointTally } from "./point-tally";
import type { TrendPointSummary } from "./trend-file";

/** A point as a preview shows it, up to four readings between the first and the last among it. */
export function summarisePoint(point: PointTally, rhythm: Rhythm, instantsKnown: boolean): TrendPointSummary {
  const { name, draft, readings, first, last, states, sum, lists } = point;
  return {
    name,
    kind: draft.kind,
    unitAsWritten: draft.unitAsWritten,
    unit: draft.unit,
    sampling: rhythm.sampling,
    readings,
    missing: lists["value-missing"].count,
    firstUtc: first && instantsKnown ? formatUtc(first.ts) : null,
    lastUtc: last && instantsKnown ? formatUtc(last.ts) : null,
    first: first && instantsKnown ? first.value : null,
    last: last && instantsKnown ? last.value : null,
    ...(draft.kind === "state" ? { states: [...states].sort() } : { sum }),
    ...(instantsKnown ? { spot: spotsOf(point) } : {}),
    ...(draft.intervalSeconds === null ? {} : { intervalSeconds: draft.intervalSeconds }),
  };
}

function spotsOf({ spots }: PointTally): { utc: string; value: number | string }[] {
  const byTime = [...new Map(spots.map((spot) => [spot.ts, spot])).values()].sort((a, b) => a.ts - b.ts);
  const places =
    byTime.length <= 4
      ? byTime
      : [1, 3, 5, 7].map((k) => byTime[Math.floor((k * byTime.length) / 8)] as (typeof byTime)[0]);
  return places.map(({ ts, value }) => ({ utc: formatUtc(ts), value }));
}
