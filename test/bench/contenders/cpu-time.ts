import { readFileSync } from "node:fs";

/** Median wall time of a work, and the processor time of the thread that does it in that round [ms]. */
export type RoundTimes = { ms: number; threadMs: number };

export function medianRound(rounds: number, work: () => void): RoundTimes {
  const times = Array.from({ length: rounds }, (): RoundTimes => {
    const [start, before] = [performance.now(), threadMsNow()];
    work();
    return { ms: performance.now() - start, threadMs: threadMsNow() - before };
  });
  times.sort((a, b) => a.ms - b.ms);
  return times[Math.floor(times.length / 2)] ?? { ms: Number.NaN, threadMs: Number.NaN };
}

/**
 * Processor time of this thread so far [ms], as Linux counts it; elsewhere that of all threads of the process. Node 20
 * tells only the latter, and the collector's and the compiler's threads are in it.
 */
function threadMsNow(): number {
  try {
    return Number(readFileSync("/proc/thread-self/schedstat", "utf8").split(" ")[0]) / 1e6;
  } catch {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  }
}
