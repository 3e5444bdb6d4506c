import { type ImportRunRow, insertImportRun } from "@/db/queries/import-runs";
import { findReadingsRun } from "@/db/queries/readings-runs";
import { localDateAt } from "@/lib/time/local-date";
import { actorName } from "../authorise";
import type { Context } from "../context";

/**
 * The entry of the history that a sender's readings of one day count to: one a day, since a collector may call every
 * minute, and what a day brought can then be taken out again.
 */
export function runOfDay(ctx: Context, building: { id: number; timeZone: string }): ImportRunRow {
  const sender = actorName(ctx.actor);
  const fileName = `Readings from ${sender}, ${localDateAt(ctx.now, building.timeZone)}`;
  return (
    findReadingsRun(ctx.db, building.id, { fileName, startedBy: sender }) ??
    insertImportRun(ctx.db, {
      buildingId: building.id,
      kind: "readings",
      fileName,
      sha256: "",
      byteCount: 0,
      state: "done",
      startedAtMs: ctx.now,
      finishedAtMs: ctx.now,
      startedBy: sender,
    })
  );
}
