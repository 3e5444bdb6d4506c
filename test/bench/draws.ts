import { agree } from "./agree";
import { type Outcome, runContender } from "./contender";
import { line, target } from "./targets";

type DrawsOutcome = Outcome & { p50: number; threadMs: number; wholeMs: number };

/** Limits for the wall time of 5,000 draws [ms]. */
const CASES = [
  { zones: 60, limitMs: 100, rounds: 15 },
  { zones: 2000, limitMs: 3000, rounds: 3 },
] as const;

/**
 * 5,000 draws of a building of measured zones: its total, every component and zone with P10, P50 and P90, the parts of
 * the median and the tornado; beside a loop over typed arrays with the same arithmetic written out, which keeps the
 * totals alone. Both give the same median. The limit is on wall time; the thread's processor time beside it tells how
 * much of that was waiting for a busy machine, and the ratio is of processor times.
 */
export async function benchDraws(): Promise<void> {
  for (const { zones, limitMs, rounds } of CASES) {
    const engine = await runContender<DrawsOutcome>("draws-engine", { zones, rounds });
    const loop = await runContender<DrawsOutcome>("draws-loop", { zones, rounds });
    agree(`medians of ${zones} zones`, engine.p50, loop.p50, 1e-6 * Math.abs(loop.p50));
    line(`${zones} zones: tight loop ${times(loop)}; draws ${times(engine)}`);
    line(`${zones} zones: ratio of draws to tight loop ${(engine.threadMs / loop.threadMs).toFixed(1)}`);
    line(
      `${zones} zones: whole assessment with every working ${engine.wholeMs.toFixed(0)} ms, peak ${engine.peakMb.toFixed(0)} MB`,
    );
    target({ what: `5,000 draws of ${zones} zones`, figure: engine.ms, limit: limitMs, unit: "ms" });
  }
}

const times = ({ ms, threadMs }: DrawsOutcome): string =>
  `${ms.toFixed(0)} ms, ${threadMs.toFixed(0)} ms of it on the processor`;
