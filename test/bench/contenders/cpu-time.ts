/** Median processor time of some rounds of a work, all threads of the process together [ms]. */
export function medianCpuMs(rounds: number, work: () => void): number {
  const times = Array.from({ length: rounds }, () => {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  times.sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)] ?? Number.NaN;
}
