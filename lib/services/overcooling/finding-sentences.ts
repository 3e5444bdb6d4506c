import type { Finding, Severity } from "@/lib/findings/finding";
import { overcoolingFindingWords } from "@/lib/overcooling/findings";

export type FindingSentence = { code: string; severity: Severity; what: string; action: string };

/** Findings about a cost in words, for readers without a page. */
export const costFindingSentences = (findings: readonly Finding[]): FindingSentence[] =>
  findings.map((finding) => ({
    code: finding.code,
    severity: finding.severity,
    ...overcoolingFindingWords(finding),
  }));
