import { findImportRun, type ImportRunRow } from "@/db/queries/import-runs";
import { listPoints } from "@/db/queries/points";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import type { Actor, Context } from "../context";
import { ServiceError } from "../errors";
import { isUnsettled } from "../trend-imports/settle-run";

/** An import as a program reads it. */
export type RunResult = {
  id: number;
  building: number;
  kind: ImportRunRow["kind"];
  state: ImportRunRow["state"];
  /** False while the server still has something to do; a run that waits for its mapping waits for a person. */
  settled: boolean;
  message: string;
  file: { name: string; byteCount: number; sha256: string };
  /** rowsInFile = accepted + repaired + heldBack + rejected + ignored. Null before they are counted. */
  rows: Record<"rowsInFile" | "accepted" | "repaired" | "heldBack" | "rejected" | "ignored", number> | null;
  samples: Record<"added" | "changed" | "same", number> | null;
  findings: { code: string; severity: string; sentence: string }[];
  /** What a person has to answer or map before the file is stored. */
  questions: { what: string; question: string; choices: readonly string[] }[];
  pointsToMap: string[];
  receivedAt: string;
  finishedAt: string | null;
};

/** The import of a file that a collector brought, or of its building. */
export function readRunResult(ctx: Context, runId: number): RunResult {
  const run = findImportRun(ctx.db, requireCollector(ctx).buildingId, runId);
  if (!run) throw new ServiceError("not-found", "There is no import of this number in the token's building.");
  const inspection = run.inspection as Partial<TrendInspection> | null;
  const isWaiting = run.state === "waiting";
  const known = new Set(isWaiting ? listPoints(ctx.db, run.buildingId).map((point) => point.externalName) : []);
  const counted = run.state === "done";
  return {
    id: run.id,
    building: run.buildingId,
    kind: run.kind,
    state: run.state,
    settled: !isUnsettled(run),
    message: run.message,
    file: { name: run.fileName, byteCount: run.byteCount, sha256: run.sha256 },
    rows: counted
      ? {
          rowsInFile: run.rowsInFile,
          accepted: run.rowsAccepted,
          repaired: run.rowsRepaired,
          heldBack: run.rowsHeldBack,
          rejected: run.rowsRejected,
          ignored: run.rowsIgnored,
        }
      : null,
    samples: counted ? { added: run.samplesAdded, changed: run.samplesChanged, same: run.samplesSame } : null,
    findings: (inspection?.findings ?? []).map(({ code, severity, sentence }) => ({ code, severity, sentence })),
    questions: isWaiting
      ? (inspection?.ask ?? []).map(({ what, question, choices }) => ({ what, question, choices }))
      : [],
    pointsToMap: isWaiting ? (inspection?.points ?? []).flatMap(({ name }) => (known.has(name) ? [] : [name])) : [],
    receivedAt: new Date(run.startedAtMs).toISOString(),
    finishedAt: run.finishedAtMs === null ? null : new Date(run.finishedAtMs).toISOString(),
  };
}

export function requireCollector(ctx: Pick<Context, "actor">): Extract<Actor, { kind: "collector" }> {
  if (ctx.actor.kind === "collector") return ctx.actor;
  throw new ServiceError("unauthenticated", "Show a collector's token: Authorization: Bearer <token>.");
}
