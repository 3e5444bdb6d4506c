/** When a sign was seen: first and last instant [UTC s], and the shortest run of local hours that holds most of it. */
export type SeenSpan = { fromUtcSeconds: number; toUtcSeconds: number; fromHour: number; untilHour: number };

/** Share of a sign's intervals that the hours named for it must hold. Judgement, no source. */
const MOST = 0.8;

/** Counts the intervals of one sign and remembers when they were. */
export class SignTally {
  count = 0;
  private first = -1;
  private last = -1;
  private readonly byHour = new Uint32Array(24);

  /** `weekHour` is the interval's hour of the local week. Intervals must come in their order. */
  add(i: number, weekHour: number): void {
    if (this.count === 0) this.first = i;
    this.last = i;
    this.count++;
    const hour = weekHour % 24;
    this.byHour[hour] = (this.byHour[hour] as number) + 1;
  }

  span(grid: { startUtcSeconds: number; stepSeconds: number }): SeenSpan | null {
    if (this.count === 0) return null;
    return {
      fromUtcSeconds: grid.startUtcSeconds + this.first * grid.stepSeconds,
      toUtcSeconds: grid.startUtcSeconds + (this.last + 1) * grid.stepSeconds,
      ...shortestRun(this.byHour, MOST * this.count),
    };
  }
}

/** The shortest run of hours of one day, the earliest of several, that holds at least `wanted`. */
function shortestRun(byHour: Uint32Array, wanted: number): { fromHour: number; untilHour: number } {
  let best = { fromHour: 0, untilHour: 24 };
  for (let from = 0; from < 24; from++) {
    let held = 0;
    for (let hour = from; hour < 24; hour++) {
      held += byHour[hour] as number;
      if (held < wanted) continue;
      if (hour + 1 - from < best.untilHour - best.fromHour) best = { fromHour: from, untilHour: hour + 1 };
      break;
    }
  }
  return best;
}
