import { createHash } from "node:crypto";
import { inTransaction } from "@/db/client";
import { type ImportRunRow, insertImportRows, insertImportRun } from "@/db/queries/import-runs";
import type { RowFate, TableKind } from "@/lib/importers/tables/table-read";
import { localDateAt } from "@/lib/time/local-date";
import { counted } from "@/lib/units/counted";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { readTable } from "./read-table";
import { type Taken, takeRows } from "./take-rows";

/**
 * Takes zones, desks, devices or electricity bills from a CSV file. What is there already is brought up to date, so that the same file
 * again changes nothing; rows that cannot be taken are rejected by line and kept with the run.
 */
export function importTable(
  ctx: Context,
  buildingId: number,
  kind: TableKind,
  file: { name: string; bytes: Uint8Array },
): ImportRunRow {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const run = {
    buildingId,
    kind,
    fileName: file.name,
    sha256: createHash("sha256").update(file.bytes).digest("hex"),
    byteCount: file.bytes.byteLength,
    startedAtMs: ctx.now,
    finishedAtMs: ctx.now,
    startedBy: actorName(actor),
  };
  const table = readTable(ctx.db, buildingId, kind, file.bytes);
  if (table.read.status === "refused") {
    const { message } = table.read;
    insertImportRun(ctx.db, { ...run, state: "refused", message });
    throw new ServiceError("invalid", message, { file: message });
  }
  const { fates, findings } = table.read;
  return inTransaction(ctx.db, (tx) => {
    const today = localDateAt(ctx.now, building.timeZone);
    const taken = takeRows(tx, table, { buildingId, now: ctx.now, today, enteredBy: actorName(actor) });
    const row = insertImportRun(tx, {
      ...run,
      ...rowCounts(fates),
      state: "done",
      message: summary(kind, taken, fates),
      samplesAdded: taken.added,
      samplesChanged: taken.changed,
      samplesSame: taken.same,
      inspection: { findings },
    });
    const notes = fates.flatMap((each) =>
      each.fate === "accepted" ? [] : { line: each.line, fate: each.fate, code: each.code, excerpt: each.message },
    );
    insertImportRows(tx, row.id, notes);
    return row;
  });
}

function rowCounts(fates: readonly RowFate[]) {
  const count = (fate: RowFate["fate"]) => fates.filter((each) => each.fate === fate).length;
  return {
    rowsInFile: fates.length,
    rowsAccepted: count("accepted"),
    rowsRepaired: count("repaired"),
    rowsHeldBack: count("held-back"),
    rowsRejected: count("rejected"),
    rowsIgnored: count("ignored"),
  };
}

function summary(kind: TableKind, taken: Taken, fates: readonly RowFate[]): string {
  const left = fates.filter((each) => each.fate === "rejected" || each.fate === "held-back").length;
  const words = `${counted(taken.added, kind.slice(0, -1))} added, ${taken.changed} changed, ${taken.same} as they were`;
  return left > 0 ? `${words}; ${counted(left, "row")} not taken, listed below with the reason.` : `${words}.`;
}
