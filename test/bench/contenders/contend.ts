import type { Outcome } from "../contender";

/** Runs a contender's work with its input and tells the outcome to the process that started it. */
export async function contend<Input>(
  work: (input: Input) => Promise<Omit<Outcome, "peakMb"> & { peakMb?: number }>,
): Promise<void> {
  const outcome = await work(JSON.parse(process.argv[2] ?? "null") as Input);
  const peakMb = outcome.peakMb ?? process.resourceUsage().maxRSS / 1024;
  process.stdout.write(`\n${JSON.stringify({ ...outcome, peakMb })}\n`);
}

/** Time of a piece of work [ms]. */
export async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
