import { updateOwnRun, withdrawalAsked } from "@/db/queries/import-queue";
import type { ImportRunRow } from "@/db/queries/import-runs";
import type { ReadProgress, TrendFinding } from "@/lib/importers/trend-csv/trend-file";
import type { Context } from "../context";
import { NoLongerOurs } from "./claim";
import type { Work } from "./work";

/** Someone asked for the run to be cancelled while it is worked on. */
export class Withdrawn extends Error {}

/** Between two notes of how far it is, and between two signs of life while nothing is read [ms]. */
const NOTE_MS = 500;
const SIGN_MS = 5_000;

export type WorkWatch = {
  /** Notes how far the reading is, twice a second at most. Throws when the run is to be given up. */
  progress(progress: ReadProgress, more?: readonly TrendFinding[]): void;
  /** The file is read from its beginning again. */
  restart(): void;
  stop(): void;
};

/** Keeps the progress and the signs of life of a run that is worked on, and finds out when that has to stop. */
export function watchWork(ctx: Context, run: ImportRunRow, work: Work): WorkWatch {
  let notedAt = Number.NEGATIVE_INFINITY;
  let endNoted = false;
  let lost = false;
  const note = (row: Parameters<typeof updateOwnRun>[3]): void => {
    if (!updateOwnRun(ctx.db, run.id, work.owner, { ...row, heartbeatAtMs: work.clock() })) lost = true;
  };
  const signs = setInterval(() => note({}), SIGN_MS);
  signs.unref();
  return {
    progress({ bytesRead, bytesInFile, rows, readings, findings }, more = []) {
      const now = performance.now();
      const atEnd = bytesRead >= bytesInFile;
      if (now - notedAt >= NOTE_MS || (atEnd && !endNoted)) {
        notedAt = now;
        endNoted = atEnd;
        note({
          bytesRead,
          bytesToRead: bytesInFile,
          rowsRead: rows,
          readingsRead: readings,
          findingsSoFar: countsByCode([...findings, ...more]),
        });
        if (lost) throw new NoLongerOurs();
        if (withdrawalAsked(ctx.db, run.id) !== null) throw new Withdrawn();
      }
    },
    restart: () => note({ stageStartedAtMs: work.clock(), bytesRead: 0, rowsRead: 0, readingsRead: 0 }),
    stop: () => clearInterval(signs),
  };
}

function countsByCode(findings: readonly TrendFinding[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { code, count } of findings) counts[code] = (counts[code] ?? 0) + (count ?? 1);
  return counts;
}
