import type { Finding } from "@/lib/findings/finding";
import type { Range80, Working } from "@/lib/working/working";
import { isNothingKnown, modelBuilding, NOTHING_KNOWN } from "./assess-building";
import type { Tier } from "./assessment";
import type { AssessmentInput } from "./assessment-input";
import { spreadOf } from "./calculation/contributions";
import { runStudy } from "./calculation/study";
import { workingOf } from "./calculation/working-of";
import { inputFaults } from "./input-gates";

/** A building's total alone. `working` is the sum of its components at their stated values. */
export type HeadlineOnly =
  | { status: "ok"; tier: Tier; range: Range80; stated: number; working: Working }
  | { status: "blocked"; findings: Finding[] };

/** The total of an assessment without its parts, by the same draws: for figures of many variants of a building. */
export function headlineOnly(input: AssessmentInput): HeadlineOnly {
  const findings = inputFaults(input);
  if (findings.length > 0) return { status: "blocked", findings };
  const { headline } = modelBuilding(input);
  if (isNothingKnown(headline, input)) return { status: "blocked", findings: [NOTHING_KNOWN] };
  const study = runStudy([headline.total], input);
  return {
    status: "ok",
    tier: headline.tier,
    range: spreadOf(study.draws(headline.total)),
    stated: study.stated(headline.total),
    working: workingOf(headline.total, study, 0),
  };
}
