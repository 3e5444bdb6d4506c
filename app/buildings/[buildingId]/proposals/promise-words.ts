import { formatFigure } from "@/app/_components/quantity/format-figure";
import { LEFT_OUT_OF_A_PROMISE } from "@/lib/proposals/live/left-out";
import type { Worked } from "@/lib/proposals/live-picture";
import type { Proof } from "@/lib/proposals/verification-result";

const kwh = (value: number): string => formatFigure(value, { significant: 3 });

/** What was promised of a day beside what the meter showed of one, and how the two stand to each other. */
export function promiseSentence(promise: Pick<Worked, "p10" | "p50" | "p90">, proof: Proof | undefined): string {
  const promised = `${kwh(promise.p50)}\u202fkWh saved on an occupied day of the season was promised, ${kwh(promise.p10)} to ${kwh(promise.p90)} (80 % range)`;
  if (!proof || proof.low === null || proof.high === null || proof.change === null)
    return `${promised}. ${LEFT_OUT_OF_A_PROMISE}`;
  const found = `the meter shows ${kwh(proof.change)}, ${kwh(proof.low)} to ${kwh(proof.high)} (${Math.round(100 * proof.confidence)} % interval)`;
  return `${promised}; ${found}: ${relation(promise, { low: proof.low, high: proof.high })} ${LEFT_OUT_OF_A_PROMISE}`;
}

function relation({ p10, p90 }: { p10: number; p90: number }, { low, high }: { low: number; high: number }): string {
  if (low > p90) return "more than was promised.";
  if (high < p10) return "less than was promised.";
  return "the two agree within their ranges.";
}
