import { type Counted, powerToShow, rateRatio } from "@/lib/statistics/rate-ratio";
import type { Proof } from "../verification-result";
import { ratioWorking } from "./difference-working";

/** Chance of showing the expected change that makes a wait worth it: common practice, no source. */
const ENOUGH_POWER = 0.8;
const CONFIDENCE = 0.9;

/**
 * Reports before and after by their counts alone: exact conditional test with its interval, and the chance that these
 * weeks could show the expected ratio at all. Exposure in desk-days. A rate of cold reports is meant to fall; one of hot
 * reports is meant not to rise, so that it is never "shown", only not shown to be worse.
 */
export function reportProof(
  kind: "cold-reports" | "hot-reports",
  before: Counted,
  after: Counted,
  expectedRatio: number,
): Proof {
  const label = kind === "cold-reports" ? "Cold reports" : "Hot reports";
  const found = rateRatio(after, before, CONFIDENCE);
  const power =
    before.events > 0
      ? powerToShow({
          expectedBefore: before.events,
          ratio: Math.max(0.01, expectedRatio),
          exposureRatio: after.exposure / before.exposure,
          significance: 1 - CONFIDENCE,
        })
      : 0;
  const isLess = found.high !== null && found.high < 1;
  const isMore = found.low > 1;
  const verdict = isMore
    ? "worse"
    : isLess && kind === "cold-reports"
      ? "shown"
      : power < ENOUGH_POWER
        ? "too-early"
        : "not-shown";
  const range = `${found.low.toFixed(2)} to ${found.high === null ? "no upper end" : found.high.toFixed(2)}`;
  const counts = `${before.events} in ${Math.round(before.exposure)} desk-days before, ${after.events} in ${Math.round(after.exposure)} after`;
  const ratio = found.ratio === null ? "no ratio" : `ratio ${found.ratio.toFixed(2)}`;
  const chance = `These windows would show a ratio of ${expectedRatio.toFixed(2)} in ${Math.round(100 * power)} of 100 cases${power < ENOUGH_POWER ? ": not enough to tell" : ""}.`;
  const working = ratioWorking(label, before, after, found.ratio);
  return {
    id: kind,
    label,
    unit: "per 1,000 desk-days",
    before: (1000 * before.events) / before.exposure,
    after: (1000 * after.events) / after.exposure,
    change: found.ratio,
    low: found.low,
    high: found.high,
    confidence: CONFIDENCE,
    verdict,
    ...(working ? { workings: [working] } : {}),
    sentence: `${counts}: ${ratio} (90 % interval ${range}). ${chance}`,
  };
}
