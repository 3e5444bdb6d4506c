import { pairedDifference } from "@/lib/energy-model/verification/paired-difference";
import type { Term } from "@/lib/working/working";
import type { Proof } from "../verification-result";
import { type Meant, verdictOf } from "./proof-of";
import { type ProofWords, plainWords } from "./proof-words";

/** Weather-adjusted means of the weeks of a switchback, pair by pair. */
export type WeekPair = { present: number; proposed: number };

const CONFIDENCE = 0.9;

/** A switchback by the paired t test. Below two pairs nothing can be said. */
export function switchbackProof(
  pairs: readonly WeekPair[],
  about: Pick<Proof, "id" | "label" | "unit"> & { meant: Meant; words?: ProofWords },
): Proof {
  const { meant, words = plainWords(about.unit), ...named } = about;
  const nothing = { before: null, after: null, change: null, low: null, high: null, confidence: CONFIDENCE };
  if (pairs.length < 2)
    return {
      ...named,
      ...nothing,
      verdict: "too-early",
      sentence: `${pairs.length} whole pairs of weeks: two are the least that can be compared, eight are worth it.`,
    };
  const [present, proposed] = [pairs.map((each) => each.present), pairs.map((each) => each.proposed)];
  const { meanDifference, interval, t } = pairedDifference(proposed, present, CONFIDENCE);
  const [low, high] = interval;
  const meanOf = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;
  return {
    ...named,
    before: meanOf(present),
    after: meanOf(proposed),
    change: meanDifference,
    low,
    high,
    confidence: CONFIDENCE,
    verdict: verdictOf(low, high, meant),
    workings: [
      {
        formula: "d = mean of the pairs' differences over the pairs",
        terms: pairs.map(
          (pair, k): Term => ({
            symbol: `d_${k + 1}`,
            label: `pair ${k + 1}: ${pair.proposed.toPrecision(4)} proposed less ${pair.present.toPrecision(4)} present`,
            value: pair.proposed - pair.present,
            unit: named.unit,
            origin: "measured",
          }),
        ),
        result: { symbol: "d", label: `change: ${named.label}`, value: meanDifference, unit: named.unit },
        notes: [
          `90 % interval ${low.toPrecision(4)} to ${high.toPrecision(4)} ${named.unit} by Student's t of ${pairs.length} paired differences. Each week is adjusted for its outdoor air.`,
        ],
      },
    ],
    sentence: `${pairs.length} pairs of weeks, proposed less present: ${words.change(meanDifference)} ${words.changeUnit} (90 % interval ${words.change(low)} to ${words.change(high)}, t = ${t.toFixed(2)}).`,
  };
}
