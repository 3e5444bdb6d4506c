import type { Finding, Severity } from "@/lib/findings/finding";
import { blindRules } from "../diagnosis/blind-rules";
import type { ZoneDiagnosis } from "../diagnosis/diagnose-zone";
import { RULE_TRENDS } from "../diagnosis/trend-presence";
import type { PointKind } from "../point-kind";
import type { AirflowLimits } from "../state";
import type { ZoneExposure } from "../zone-exposure";
import type { ZoneStatistics } from "../zone-statistics";
import type { ZoneQuality } from "./building-quality";
import { type Consequence, consequencesOf, severityOf, type ZoneStanding } from "./consequences";

/** A problem of a zone's record with what it stops. */
export type QualityProblem = { finding: Finding; severity: Severity; consequences: Consequence[] };

/** What the rest of the product has made of a zone. */
export type ZoneResult = {
  analysis: { exposure: ZoneExposure; statistics: ZoneStatistics; limits: AirflowLimits } | null;
  diagnosis: ZoneDiagnosis | null;
  /** How the measured cost takes the zone; null where the cost does not rest on measured zones. */
  inCost: "measured" | "left-out" | null;
  /** Why the cost cannot use the zone's record, as it says itself. */
  costFindings: readonly Finding[];
};

/**
 * Findings of the analysis that speak of the record. Others say the same as a finding of the quality checks
 * (`setpoint-record-short`, `state-points-missing`), concern the whole building (its outdoor air) or are no problem.
 */
const OF_THE_RECORD = [
  "record-too-short",
  "no-cooling-season",
  "zone-air-gaps",
  "coarse-samples",
  "minimum-airflow-unknown",
];

const ORDER: readonly Severity[] = ["disqualifies", "caution", "note"];

/** Every problem of a zone's record, gravest first. `buildingKinds` are the kinds that the building itself has trends of. */
export function zoneProblems(
  quality: ZoneQuality,
  result: ZoneResult,
  buildingKinds: readonly PointKind[],
): QualityProblem[] {
  const { analysis, diagnosis } = result;
  const standing: ZoneStanding = {
    diagnosis,
    leftOutOfCost: result.inCost === "left-out",
    blind: analysis ? blindRules({ ...analysis, presence: quality.presence }) : [],
    splitHours: result.inCost === "measured" ? (analysis?.exposure.byState.undetermined.hours ?? 0) : 0,
  };
  const findings = [
    ...quality.findings,
    ...(analysis ? missingFindings(quality, analysis, buildingKinds) : [ZONE_AIR_MISSING]),
    ...(analysis?.exposure.findings.filter(({ code }) => OF_THE_RECORD.includes(code)) ?? []),
    ...(diagnosis?.causes.filter(({ code }) => code === "sensor-bias") ?? []),
    ...result.costFindings,
  ];
  const problems = findings.map((finding): QualityProblem => {
    const consequences = consequencesOf(finding, standing);
    return { finding, consequences, severity: severityOf(finding, consequences) };
  });
  return problems.sort(
    (a, b) =>
      ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity) ||
      b.consequences.length - a.consequences.length ||
      a.finding.code.localeCompare(b.finding.code),
  );
}

const ZONE_AIR_MISSING: Finding = { code: "zone-air-missing", severity: "disqualifies", evidence: {} };

const OF_A_SINGLE_ZONE_UNIT: readonly PointKind[] = ["cooling-setpoint", "heating-setpoint"];

function missingFindings(
  { points }: ZoneQuality,
  { limits, exposure }: NonNullable<ZoneResult["analysis"]>,
  buildingKinds: readonly PointKind[],
): Finding[] {
  // A unit that serves the zone alone has no box: its cooling stage and the setpoints are all that the rules ask of it.
  const isSingleZone = exposure.hasTrend.coolingStage;
  const wanted = isSingleZone ? OF_A_SINGLE_ZONE_UNIT : RULE_TRENDS;
  const there = new Set<PointKind>([...points.map(({ kind }) => kind), ...buildingKinds]);
  const findings: Finding[] = wanted
    .filter((kind) => !there.has(kind))
    .map((kind) => ({
      code: "trend-missing",
      severity: "note",
      evidence: { point: kind },
    }));
  if (!isSingleZone && limits.designAirflowM3ps === null)
    findings.push({ code: "design-airflow-unknown", severity: "note", evidence: {} });
  return findings;
}
