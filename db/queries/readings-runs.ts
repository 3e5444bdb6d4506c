import { and, desc, eq, sql } from "drizzle-orm";
import type { Queryable } from "../client";
import { importRun } from "../schema/trend-import";
import type { ImportRunRow } from "./import-runs";

/** The run that readings of a sender and day count to. */
export function findReadingsRun(
  db: Queryable,
  buildingId: number,
  { fileName, startedBy }: Pick<ImportRunRow, "fileName" | "startedBy">,
): ImportRunRow | undefined {
  return db
    .select()
    .from(importRun)
    .where(
      and(
        eq(importRun.buildingId, buildingId),
        eq(importRun.kind, "readings"),
        eq(importRun.state, "done"),
        eq(importRun.fileName, fileName),
        eq(importRun.startedBy, startedBy),
      ),
    )
    .orderBy(desc(importRun.id))
    .limit(1)
    .get();
}

type Counts = Pick<
  ImportRunRow,
  "rowsInFile" | "rowsAccepted" | "rowsRepaired" | "rowsRejected" | "samplesAdded" | "samplesChanged" | "samplesSame"
>;

/** Adds what one call brought to the run's counts. */
export function addToReadingsRun(db: Queryable, id: number, counts: Counts, finishedAtMs: number): ImportRunRow {
  const { rowsInFile, rowsAccepted, rowsRepaired, rowsRejected, samplesAdded, samplesChanged, samplesSame } = importRun;
  return db
    .update(importRun)
    .set({
      rowsInFile: sql`${rowsInFile} + ${counts.rowsInFile}`,
      rowsAccepted: sql`${rowsAccepted} + ${counts.rowsAccepted}`,
      rowsRepaired: sql`${rowsRepaired} + ${counts.rowsRepaired}`,
      rowsRejected: sql`${rowsRejected} + ${counts.rowsRejected}`,
      samplesAdded: sql`${samplesAdded} + ${counts.samplesAdded}`,
      samplesChanged: sql`${samplesChanged} + ${counts.samplesChanged}`,
      samplesSame: sql`${samplesSame} + ${counts.samplesSame}`,
      finishedAtMs,
    })
    .where(eq(importRun.id, id))
    .returning()
    .get();
}
