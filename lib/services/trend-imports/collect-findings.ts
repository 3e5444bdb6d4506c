import { makeFinding } from "@/lib/importers/trend-csv/findings";
import type { TrendFinding } from "@/lib/importers/trend-csv/trend-file";

/**
 * Findings of a file that is read part by part, one for each code and point: counts are added up, ranges of values
 * stretched over all parts.
 */
export class CollectedFindings {
  private readonly byPoint = new Map<string, TrendFinding>();

  add(findings: readonly TrendFinding[]): void {
    for (const finding of findings) {
      const key = `${finding.code}\u0000${finding.point ?? ""}`;
      const before = this.byPoint.get(key);
      this.byPoint.set(key, before ? merged(before, finding) : finding);
    }
  }

  list(): TrendFinding[] {
    return [...this.byPoint.values()];
  }
}

function merged(before: TrendFinding, { count, evidence }: TrendFinding): TrendFinding {
  const { code, severity: _severity, sentence: _sentence, ...facts } = before;
  return makeFinding(code, {
    ...facts,
    count: (before.count ?? 1) + (count ?? 1),
    evidence: mergedEvidence(before.evidence, evidence),
  });
}

const RANGE = /^(?:all (\S+)|from (\S+) to (\S+) in the file's unit)$/;

/** The range over both, where both say one; else what was said first. */
function mergedEvidence(one: string | undefined, other: string | undefined): string | undefined {
  const ends = [one, other].flatMap((text) => {
    const [, all, from, to] = RANGE.exec(text ?? "") ?? [];
    return all === undefined ? [from, to] : [all, all];
  });
  const numbers = ends.map(Number);
  if (ends.length < 4 || numbers.some(Number.isNaN)) return one ?? other;
  const [lowest, highest] = [Math.min(...numbers), Math.max(...numbers)];
  return lowest === highest ? `all ${lowest}` : `from ${lowest} to ${highest} in the file's unit`;
}
