import path from "node:path";
import { withContext } from "@/app/_cli/context";
import { listPoints } from "@/db/queries/points";
import { openFile } from "@/db/uploads";
import { HeldParts } from "@/lib/importers/trend-csv/held-parts";
import { inspectTrendSource } from "@/lib/importers/trend-csv/read-trend-parts";
import { CollectedFindings } from "@/lib/services/trend-imports/collect-findings";
import { slicesOf } from "@/lib/services/trend-imports/mapped-points";
import type { Outcome } from "../contender";
import { TIME_ZONE } from "../data/office-trends";
import { contend, timed } from "./contend";
import type { ProductInput } from "./product-outcome";

export type StoredOutcome = Outcome & { added: number; rowsInFile: number };

/** Runs of the bench: beyond any that the imports before it have had. */
const FIRST_RUN = 1_000;

/**
 * Files of points that are known, one after the other: read, with findings and the fate of every row, and stored. Nothing
 * is mapped, queued or put on record. The time is that of the last.
 */
await contend<ProductInput>(async ({ dataFolder, files }) => {
  process.env.SETPOINT_LEDGER_DATA = dataFolder;
  return await withContext(async ({ db, trends }): Promise<Omit<StoredOutcome, "cpuMs" | "peakMb">> => {
    const series = new Map(listPoints(db, 1).map(({ id, externalName, kind }) => [externalName, { id, kind }]));
    let last = { ms: 0, added: 0, rowsInFile: 0 };
    for (const [k, file] of files.entries()) {
      const ms = await timed(async () => {
        const source = openFile(file);
        const parts = new HeldParts();
        const result = await inspectTrendSource(
          { fileName: path.basename(file), source, timeZone: TIME_ZONE },
          undefined,
          parts,
        );
        const findings = new CollectedFindings();
        const noted = { findings, onPart: () => {}, onEnd: () => {} };
        const { added } = await trends.write(slicesOf(parts.replay(result), series, noted), FIRST_RUN + k);
        source.close();
        last = { ...last, added, rowsInFile: result.rows.rowsInFile };
      });
      last = { ...last, ms };
    }
    return last;
  });
});
