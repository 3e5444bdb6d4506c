import type { FindingLine } from "@/app/_components/ui/findings-list";
import type { Finding, Severity } from "@/lib/findings/finding";
import type { ImportRun } from "@/lib/services/imports/history";
import { formatNumber } from "@/lib/units/format";

const whole = (value: number) => formatNumber(value, { decimals: 0 });

/** The five fates, which add up to the rows of the file, and what was stored. */
export function rowItems(run: ImportRun): { term: string; value: string }[] {
  if (run.rowsInFile === 0) return [];
  const fates = [
    `${whole(run.rowsAccepted)} accepted`,
    `${whole(run.rowsRepaired)} repaired`,
    `${whole(run.rowsHeldBack)} held back`,
    `${whole(run.rowsRejected)} rejected`,
    `${whole(run.rowsIgnored)} ignored`,
  ].join(" + ");
  return [
    { term: "Rows", value: `${whole(run.rowsInFile)} = ${fates}` },
    {
      term: run.kind === "trends" ? "Samples" : "Entries",
      value: `${whole(run.samplesAdded)} added, ${whole(run.samplesChanged)} changed, ${whole(run.samplesSame)} as they were`,
    },
  ];
}

type KeptFinding = { code: string; severity: Severity; sentence?: string; evidence?: Finding["evidence"] };

/** Findings as they were kept with the run; their sentences were made when the file was read. */
export function findingLines(run: Pick<ImportRun, "inspection">): FindingLine[] {
  const { findings = [] } = (run.inspection ?? {}) as { findings?: KeptFinding[] };
  return findings.map((finding, i) => ({
    key: `${finding.code}-${i}`,
    severity: finding.severity,
    sentence: finding.sentence ?? finding.code.replaceAll("-", " "),
  }));
}
