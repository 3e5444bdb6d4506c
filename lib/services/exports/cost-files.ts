import type { BuildingAssessment } from "@/lib/overcooling/assessment";
import { costFindingSentences } from "../overcooling/finding-sentences";
import { csvText } from "./csv";
import type { ExportedFile } from "./export-building";

/** The cost by component and by zone, exact, and what there is to know about it; no figures where there can be none. */
export function costFiles(assessment: BuildingAssessment, currency: string): ExportedFile[] {
  const findings = costFindingSentences(assessment.findings).map(({ code, severity, what, action }) => [
    severity,
    code,
    what,
    action,
  ]);
  const findingsFile = {
    fileName: "cost-findings.csv",
    text: csvText(["severity", "code", "finding", "what to do"], findings),
  };
  if (assessment.status !== "ok") return [findingsFile];
  const money = `${currency}/year`;
  const { headline, statedTotal, tier } = assessment;
  const amounts = [`stated (${money})`, `part of P50 (${money})`, `P10 (${money})`, `P90 (${money})`];
  const components = assessment.components.map((each) => [
    each.label,
    each.electricKwh,
    each.heatKwh,
    each.statedValue,
    each.contribution,
    each.p10,
    each.p90,
  ]);
  const total = [`total, tier ${tier.number}`, null, null, statedTotal, headline.p50, headline.p10, headline.p90];
  const zones = assessment.zones.map((each) => [
    each.code,
    each.floorAreaM2,
    each.measured,
    each.statedValue,
    each.contribution,
    each.p10,
    each.p90,
  ]);
  return [
    {
      fileName: "cost-components.csv",
      text: csvText(["component", "electricity (kWh/year)", "heat (kWh/year)", ...amounts], [...components, total]),
    },
    { fileName: "cost-zones.csv", text: csvText(["zone", "area (m2)", "measured", ...amounts], zones) },
    findingsFile,
  ];
}
