/** Median of the times of `rounds` runs, in milliseconds, after one that is not counted. */
export async function medianMs(rounds: number, work: () => unknown): Promise<number> {
  await work();
  const times: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)] ?? 0;
}

/** One line of figures: name, milliseconds, and what it is compared with. */
export function report(name: string, ms: number, remark: string): void {
  process.stdout.write(`${name.padEnd(44)} ${ms.toFixed(2).padStart(9)} ms   ${remark}\n`);
}
