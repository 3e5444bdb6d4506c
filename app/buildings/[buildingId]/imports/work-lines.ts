import type { ImportAtWork } from "@/lib/services/trend-imports/at-work";
import { formatNumber } from "@/lib/units/format";
import { STATE_WORDS } from "./view-model";

/** How far a file is, in words that need no more work: drawn by the page and by the script that follows it. */
export type WorkLine = {
  id: number;
  fileName: string;
  /** Changes whenever the page has to be drawn anew. */
  stage: string;
  stageWords: string;
  /** Share of the bytes that have been read, 0 to 1; null while it waits for its turn. */
  doneFraction: number | null;
  facts: string;
  findings: string;
  canCancel: boolean;
};

const whole = (value: number) => formatNumber(value, { decimals: 0 });

export function workLines(runs: readonly ImportAtWork[], nowMs: number): WorkLine[] {
  return runs.map((run) => workLine(run, nowMs));
}

function workLine(run: ImportAtWork, nowMs: number): WorkLine {
  const isRead = run.withdrawalAskedBy === null && (run.state === "inspecting" || run.state === "running");
  return {
    id: run.id,
    fileName: run.fileName,
    stage: `${run.state}${run.withdrawalAskedBy === null ? "" : "-withdrawn"}`,
    stageWords: stageWords(run),
    doneFraction: isRead ? doneFraction(run) : null,
    facts: isRead ? factsOf(run, nowMs) : run.message || sizeOf(run.byteCount),
    findings: isRead ? findingsSoFar(run.findingsSoFar ?? {}) : "",
    canCancel: run.withdrawalAskedBy === null,
  };
}

function stageWords({ state, withdrawalAskedBy }: ImportAtWork): string {
  if (withdrawalAskedBy === null) return STATE_WORDS[state];
  return state === "done" || state === "interrupted" || state === "failed" ? "being undone" : "being cancelled";
}

function doneFraction({ bytesRead, bytesToRead }: ImportAtWork): number {
  return bytesToRead > 0 ? Math.min(1, bytesRead / bytesToRead) : 0;
}

function factsOf(run: ImportAtWork, nowMs: number): string {
  if (run.rowsRead === 0) return `${sizeOf(run.byteCount)}, begun`;
  const elapsedS = Math.max(0.001, (nowMs - (run.stageStartedAtMs ?? nowMs)) / 1000);
  const facts = [
    `${whole(run.rowsRead)} ${run.rowsRead === 1 ? "row" : "rows"}`,
    `${whole(run.readingsRead / elapsedS)} readings/s`,
    timeLeft(elapsedS, doneFraction(run)),
  ];
  return facts.join(", ");
}

/** By the share read so far; nothing is promised of the first hundredth. */
function timeLeft(elapsedS: number, fraction: number): string {
  if (fraction < 0.01) return "time left not known yet";
  const leftS = (elapsedS * (1 - fraction)) / fraction;
  if (leftS < 1.5) return "about to end";
  return leftS < 90 ? `about ${whole(leftS)} s left` : `about ${whole(leftS / 60)} min left`;
}

function findingsSoFar(counts: Readonly<Record<string, number>>): string {
  const all = Object.entries(counts).sort(([, a], [, b]) => b - a);
  if (all.length === 0) return "No findings so far.";
  const shown = all.slice(0, 4).map(([code, count]) => `${code.replaceAll("-", " ")} ${whole(count)}`);
  const more = all.length > shown.length ? `, and ${all.length - shown.length} more` : "";
  return `Findings so far: ${shown.join(", ")}${more}.`;
}

export function sizeOf(bytes: number): string {
  if (bytes < 1_000) return `${whole(bytes)} bytes`;
  if (bytes < 1_000_000) return `${whole(bytes / 1_000)} kB`;
  return `${formatNumber(bytes / 1_000_000, { decimals: bytes < 10_000_000 ? 1 : 0 })} MB`;
}
