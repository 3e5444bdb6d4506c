import type { Outcome } from "../contender";

/** Runs a contender's work with its input and tells the outcome to the process that started it. */
export async function contend<Input>(
  work: (input: Input) => Promise<Omit<Outcome, "peakMb" | "cpuMs"> & { peakMb?: number; cpuMs?: number }>,
): Promise<void> {
  const before = process.cpuUsage();
  const outcome = await work(JSON.parse(process.argv[2] ?? "null") as Input);
  const { user, system } = process.cpuUsage(before);
  const peakMb = outcome.peakMb ?? process.resourceUsage().maxRSS / 1024;
  process.stdout.write(`\n${JSON.stringify({ cpuMs: (user + system) / 1000, ...outcome, peakMb })}\n`);
}

/** Time of a piece of work [ms]. */
export async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
