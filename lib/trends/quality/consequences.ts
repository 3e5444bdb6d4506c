import type { Finding, Severity } from "@/lib/findings/finding";
import type { BlindRule, RuleNeed } from "../diagnosis/blind-rules";
import { FAULTS, type ZoneDiagnosis } from "../diagnosis/diagnose-zone";
import type { CauseCode } from "../diagnosis/zone-evidence";

/** What a problem of a zone's record stops. Nothing at all is an empty list. */
export type Consequence =
  /** These causes cannot be named, whatever the zone does. */
  | { kind: "rules"; codes: CauseCode[] }
  /** The zone has no verdict, or an undetermined one. */
  | { kind: "verdict" }
  /** The zone is left out of the measured cost. */
  | { kind: "cost" }
  /** The verdict is "fault first": no setpoint or airflow is proposed before it is seen to. */
  | { kind: "levers" }
  /** The cost splits these hours over the states by assumption. */
  | { kind: "hours-split"; hours: number };

/** How things stand with a zone, as the diagnosis and the cost themselves have found. */
export type ZoneStanding = {
  /** Null without a record of zone air. */
  diagnosis: ZoneDiagnosis | null;
  blind: readonly BlindRule[];
  /** Whether the cost rests on measured zones and leaves this one out. */
  leftOutOfCost: boolean;
  /** Hours of undetermined state that the measured cost splits over the states; 0 where it does not rest on them. */
  splitHours: number;
};

/** Needs whose want leaves a state undetermined. */
const STATE_NEEDS: readonly RuleNeed[] = ["airflow", "reheat-valve", "minimum-airflow"];

/** What one finding about a zone's record stops, read off what the diagnosis and the cost did with the zone. */
export function consequencesOf(finding: Finding, zone: ZoneStanding): Consequence[] {
  const undetermined = zone.diagnosis === null || zone.diagnosis.verdict === "undetermined";
  switch (finding.code) {
    case "zone-air-missing":
    case "record-too-short":
    case "no-cooling-season":
      return [
        ...(undetermined ? [{ kind: "verdict" } as const] : []),
        ...(zone.leftOutOfCost ? [{ kind: "cost" } as const] : []),
      ];
    case "zone-air-implausible":
    case "record-without-hours":
    case "record-of-another-target":
      return zone.leftOutOfCost ? [{ kind: "cost" }] : [];
    case "sensor-bias":
      return isOnlyFault(zone.diagnosis) ? [{ kind: "levers" }] : [];
    case "minimum-airflow-unknown":
      return ofNeeds(["minimum-airflow"], zone);
    case "design-airflow-unknown":
      return ofNeeds(["design-airflow"], zone);
    case "trend-missing":
    case "trend-short":
      return ofNeeds([finding.evidence.point as RuleNeed], zone);
    case "samples-missing":
      // Hours of undetermined state come from many small gaps as well: they are no one gap's.
      return ofNeeds((finding.evidence.points ?? []) as RuleNeed[], { ...zone, splitHours: 0 });
    default:
      return [];
  }
}

const isOnlyFault = (diagnosis: ZoneDiagnosis | null): boolean =>
  diagnosis?.verdict === "fault-first" && !diagnosis.causes.some(({ code }) => FAULTS.includes(code));

function ofNeeds(needs: readonly RuleNeed[], { diagnosis, blind, splitHours }: ZoneStanding): Consequence[] {
  const found: Consequence[] = [];
  const codes = blind.filter((rule) => rule.lacks.some((each) => needs.includes(each))).map((rule) => rule.code);
  if (codes.length > 0) found.push({ kind: "rules", codes });
  const forStates = needs.some((each) => STATE_NEEDS.includes(each));
  // A verdict is undetermined for want of these only where rules are blind for want of them too.
  if (forStates && codes.length > 0 && diagnosis?.verdict === "undetermined") found.push({ kind: "verdict" });
  if (forStates && splitHours > 0) found.push({ kind: "hours-split", hours: splitHours });
  return found;
}

/** A problem weighs by what it stops: a verdict or the cost most, else its own severity, and a blind rule a caution. */
export function severityOf(finding: Finding, consequences: readonly Consequence[]): Severity {
  if (consequences.some(({ kind }) => kind === "verdict" || kind === "cost")) return "disqualifies";
  if (consequences.some(({ kind }) => kind === "rules" || kind === "levers")) return "caution";
  return finding.severity === "disqualifies" ? "caution" : finding.severity;
}
