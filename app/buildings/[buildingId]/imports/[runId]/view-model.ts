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

/** What cancelling does to this import, before it is done. */
export function cancelLede({ state }: Pick<ImportRun, "state">): string {
  return state === "running"
    ? "What it has stored so far is taken out again; trends are then as they were before it."
    : "Nothing of it is stored yet. The file can be brought in again at any time.";
}

/** What undoing does to this import, with its figures. */
export function undoLede({ samplesAdded, samplesChanged }: Pick<ImportRun, "samplesAdded" | "samplesChanged">): string {
  return [
    `${whole(samplesAdded)} added ${samplesAdded === 1 ? "sample goes" : "samples go"}`,
    `${whole(samplesChanged)} changed ${samplesChanged === 1 ? "one is" : "ones are"} put back. Its points stay mapped, and the file can be brought in again.`,
  ].join(", ");
}

export function rowsTitle(count: number): string {
  return count === 1 ? "1 row not plainly accepted" : `${whole(count)} rows not plainly accepted`;
}

/** Whether trying again may help: not after another import has completed this one. */
export const canRepeat = ({ kind, state, message }: Pick<ImportRun, "kind" | "state" | "message">): boolean =>
  kind === "trends" && (state === "interrupted" || state === "failed") && !message.startsWith("Completed by import");

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
