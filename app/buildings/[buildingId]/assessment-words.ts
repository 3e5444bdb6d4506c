import type { FindingLine } from "@/app/_components/ui/findings-list";
import type { Finding } from "@/lib/findings/finding";
import { overcoolingFindingWords } from "@/lib/overcooling/findings";

/** Findings about an assessment in words. */
export function assessmentFindingLines(findings: readonly Finding[]): FindingLine[] {
  return findings.map((finding, i) => {
    const { what, action } = overcoolingFindingWords(finding);
    return { key: `${finding.code}-${i}`, severity: finding.severity, sentence: what, action };
  });
}
