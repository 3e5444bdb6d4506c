import type { ProofVerdict } from "../verification-plan";
import type { Proof } from "../verification-result";
import type { WeatherDifference } from "./comparable-days";
import { differenceWorking } from "./difference-working";
import { type ProofWords, plainWords } from "./proof-words";

/** Which way a change is meant to go, and how far at least before it is worth waiting for. */
export type Meant = { sign: 1 | -1; expected: number };

/**
 * What an interval says of a change that is meant to go one way: shown or worse where it leaves nought out; else too early
 * while it is wider than what is expected, and not shown once it is not.
 */
export function verdictOf(low: number, high: number, { sign, expected }: Meant): ProofVerdict {
  const [worst, best] = sign > 0 ? [low, high] : [-high, -low];
  if (worst > 0) return "shown";
  if (best < 0) return "worse";
  return (best - worst) / 2 > Math.abs(expected) ? "too-early" : "not-shown";
}

type Measured = { id: Proof["id"]; label: string; unit: string; confidence: number; meant: Meant; words?: ProofWords };

/** A measured difference of days of like weather as a proof with its sentence. */
export function differenceProof(
  found: WeatherDifference,
  { id, label, unit, confidence, meant, words = plainWords(unit) }: Measured,
): Proof {
  if (found.status === "not-comparable") {
    return {
      id,
      label,
      unit,
      before: null,
      after: null,
      change: null,
      low: null,
      high: null,
      confidence,
      verdict: "too-early",
      sentence: `Only ${found.daysBefore} days before and ${found.daysAfter} after are of like weather: 5 of each are needed.`,
    };
  }
  const { before, after, difference, low, high } = found;
  const verdict = verdictOf(low, high, meant);
  const pct = Math.round(100 * confidence);
  return {
    id,
    label,
    unit,
    before,
    after,
    change: difference,
    low,
    high,
    confidence,
    verdict,
    workings: [differenceWorking(found, { label, unit, confidence })],
    sentence: `${words.value(before)} ${words.unit} before and ${words.value(after)} ${words.unit} after, on ${found.daysBefore} and ${found.daysAfter} days of like weather: a change of ${words.change(difference)} ${words.changeUnit} (${pct} % interval ${words.change(low)} to ${words.change(high)}), ${words.change(meant.expected)} expected.`,
  };
}

/** Overall: worse where anything is, shown where what the proposal is about is, else too early while one of those is. */
export function overallVerdict(proofs: readonly Proof[]): ProofVerdict {
  const aim = proofs.filter((each) => each.id !== "hot-reports");
  if (proofs.some((each) => each.verdict === "worse")) return "worse";
  const main = aim.filter((each) => ["zone-air", "energy"].includes(each.id));
  if (main.length > 0 && main.every((each) => each.verdict === "shown")) return "shown";
  const telling = main.length > 0 ? main : aim;
  if (telling.some((each) => each.verdict === "too-early")) return "too-early";
  return "not-shown";
}
