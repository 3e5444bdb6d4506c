/**
 * Chance that reports of two kinds, dealt to desks by luck, fall apart by desk at least as cleanly as they did: the number of
 * reports that go against their desk's majority is at most the one found. All ways to choose which reports are hot are equally
 * likely (the exact permutation test of Fisher 1935, with that number as its statistic); counted by going through the desks.
 */
export function desksApartProbability(desks: readonly { cold: number; hot: number }[]): number {
  const hotInAll = desks.reduce((sum, each) => sum + each.hot, 0);
  const found = desks.reduce((sum, each) => sum + Math.min(each.cold, each.hot), 0);
  /** Log of the number of ways, by hot reports dealt so far and reports against their desk so far. */
  let ways = new Map<string, number>([["0/0", 0]]);
  let all = 0;
  for (const { cold, hot } of desks) {
    const own = cold + hot;
    all += own;
    const next = new Map<string, number>();
    for (const [key, log] of ways) {
      const [dealt = 0, against = 0] = key.split("/").map(Number);
      for (let here = 0; here <= own && dealt + here <= hotInAll; here++) {
        const nowAgainst = against + Math.min(here, own - here);
        if (nowAgainst > found) continue;
        const at = `${dealt + here}/${nowAgainst}`;
        next.set(at, logSum(next.get(at), log + logChoose(own, here)));
      }
    }
    ways = next;
  }
  let atMost: number | undefined;
  for (const [key, log] of ways) if (key.startsWith(`${hotInAll}/`)) atMost = logSum(atMost, log);
  return atMost === undefined ? 0 : Math.min(1, Math.exp(atMost - logChoose(all, hotInAll)));
}

function logChoose(n: number, k: number): number {
  let log = 0;
  for (let i = 1; i <= k; i++) log += Math.log((n - k + i) / i);
  return log;
}

function logSum(a: number | undefined, b: number): number {
  if (a === undefined) return b;
  const high = Math.max(a, b);
  return high + Math.log(Math.exp(a - high) + Math.exp(b - high));
}
