import type { Finding } from "@/lib/findings/finding";
import type { Consequence } from "./consequences";

function partWords(each: Consequence): string {
  switch (each.kind) {
    case "rules":
      return `cannot be judged: ${each.codes.map((code) => code.replaceAll("-", " ")).join(", ")}`;
    case "verdict":
      return "the zone has no verdict, or an undetermined one";
    case "cost":
      return "the zone is left out of the measured cost";
    case "levers":
      return "no setpoint or airflow is proposed for the zone until this is seen to";
    case "hours-split":
      return `${Math.round(each.hours)} h of undetermined state are split by assumption in the cost`;
  }
}

/** What a problem disqualifies, in words; says so where it is nothing. */
export function consequenceWords(finding: Finding, consequences: readonly Consequence[]): string {
  if (consequences.length === 0)
    return `Disqualifies nothing: ${NOTHING[finding.code] ?? "it is counted as recorded"}.`;
  return `${consequences
    .map(partWords)
    .join("; ")
    .replace(/^./, (first) => first.toUpperCase())}.`;
}

/** What the figures do all the same where nothing is stopped. */
const NOTHING: Record<string, string> = {
  "samples-missing": "hours without samples are left out, the rest counts",
  "zone-air-gaps": "hours without samples are left out, the rest counts",
  "outdoor-gaps": "hours without an outdoor temperature are left out, the rest counts",
  "sensor-stuck": "these hours are counted as recorded, in the diagnosis and in the cost",
  "values-unlikely": "these samples are counted as recorded",
  "unit-switched": "both sides of the step are counted as recorded",
  "clock-change-not-followed":
    "hours are counted as recorded, so that some lie on the wrong side of the occupied hours",
  "clock-off": "hours are counted as recorded, so that some may lie on the wrong side of the occupied hours",
  "coarse-samples": "each sample stands for its whole step",
  "trend-short": "no rule lacks it for long enough, and it is not carried outside its record",
  "trend-missing": "no rule waits for it",
};

/** The same in a few words, for a table; "nothing" where it is nothing. */
export function consequenceSummary(consequences: readonly Consequence[]): string {
  if (consequences.length === 0) return "nothing";
  const parts = consequences.map((each): string => {
    const { kind } = each;
    if (kind === "rules")
      return each.codes.length === 1 ? "1 cause not judged" : `${each.codes.length} causes not judged`;
    if (kind === "hours-split") return `${Math.round(each.hours)} h split by assumption`;
    return SHORT[kind];
  });
  return parts.join(", ");
}

const SHORT = { verdict: "no verdict", cost: "left out of the cost", levers: "nothing proposed" } as const;
