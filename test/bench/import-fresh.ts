import { rmSync } from "node:fs";
import path from "node:path";
import { agree } from "./agree";
import { type Outcome, runContender } from "./contender";
import type { ProductOutcome } from "./contenders/product-outcome";
import { TYPICAL, writeTrendFile } from "./data/trend-file";
import type { Workplace } from "./import";
import { median } from "./median";
import { line, plain, target, unmeasured } from "./targets";

type PeerOutcome = Outcome & { bytes: number; rows?: number; missing?: boolean };

/**
 * How the rows of the long file are written: with a unit and a status each, as control systems write them (54 bytes a row in
 * the measurements that the limits come from; the stamp, a name and a value alone are 44).
 */
export const LONG_FIELDS = "unit-and-status";

/** A year of 60 zones into an empty data folder: the whole import, beside peers that load the same file and check less. */
export async function benchFresh(place: Workplace, layout: "wide" | "long", rounds: number): Promise<void> {
  const file = path.join(place.folder, `typical-${layout}.csv`);
  const written = writeTrendFile(file, { layout, ...TYPICAL, ...(layout === "long" ? { fields: LONG_FIELDS } : {}) });
  line(
    `\n${layout} file: ${written.readings} readings in ${written.rows} rows, ${(written.bytes / 1e6).toFixed(0)} MB; ${rounds} rounds`,
  );

  const peer = (script: string, options: { threads?: number } = {}) => {
    const database = path.join(place.folder, `${script}.db`);
    return runContender<PeerOutcome>(script, { file, database, layout, ...options }).finally(() =>
      rmSync(database, { force: true }),
    );
  };
  const contenders: Record<string, () => Promise<PeerOutcome | ProductOutcome>> = {
    product: async () => {
      const dataFolder = place.freshDataFolder();
      const done = await runContender<ProductOutcome>("import-product", { dataFolder, files: [file] });
      rmSync(dataFolder, { recursive: true });
      if (done.outcome !== "imported") throw new Error(done.message);
      // A reading of the repeated hour that is there once only is held back: in a long file a row is a reading.
      const heldBack = layout === "long" ? (done.rows?.heldBack ?? 0) : 0;
      agree("readings stored and readings in the file", done.samples?.added, written.readings - heldBack);
      agree("rows accounted for and rows in the file", done.rows?.rowsInFile, written.rows);
      return done;
    },
    read_csv: () => peer("import-duckdb"),
    "on 1 thread": () => peer("import-duckdb", { threads: 1 }),
    ".import": () => peer("import-shell"),
    "row inserts": () => peer("import-rows"),
  };

  const outcomes: Record<string, (PeerOutcome | ProductOutcome)[]> = {};
  for (let round = 0; round < rounds; round++) {
    for (const [name, run] of Object.entries(contenders)) {
      const outcome = await run().catch((error: Error) => {
        if (round === 0) line(`  ${name}: left out. ${error.message.split("\n")[0]}`);
        return null;
      });
      if (outcome) outcomes[name] = [...(outcomes[name] ?? []), outcome];
    }
  }
  report(layout, written.readings, outcomes);
}

function report(layout: string, readings: number, outcomes: Record<string, (PeerOutcome | ProductOutcome)[]>): void {
  const of = (name: string, figure: (outcome: PeerOutcome | ProductOutcome) => number) =>
    median((outcomes[name] ?? []).map(figure));
  const ratio = (a: string, b: string) =>
    median((outcomes[a] ?? []).map((each, round) => each.ms / (outcomes[b]?.[round]?.ms ?? Number.NaN)));
  for (const [name, all] of Object.entries(outcomes)) {
    if (all.some((each) => "missing" in each && each.missing)) {
      line(`  ${name}: left out, there is no sqlite3 program here.`);
      continue;
    }
    const ms = of(name, (each) => each.ms);
    line(
      `  ${name.padEnd(12)} ${ms.toFixed(0).padStart(7)} ms  ${(readings / ms / 1000).toFixed(2).padStart(6)} M readings/s  ` +
        `${ratio(name, "read_csv").toFixed(2).padStart(5)} of read_csv  ${(of(name, (each) => each.bytes) / readings).toFixed(2).padStart(6)} bytes/reading  ` +
        `cpu ${of(name, (each) => each.cpuMs)
          .toFixed(0)
          .padStart(6)} ms  ` +
        `peak ${of(name, (each) => each.peakMb)
          .toFixed(0)
          .padStart(4)} MB`,
    );
  }
  const byCpu = (peer: string) =>
    median((outcomes.product ?? []).map((each, round) => each.cpuMs / (outcomes[peer]?.[round]?.cpuMs ?? Number.NaN)));
  line(`  beside read_csv on one thread, as the import is: ${plain(ratio("product", "on 1 thread"))} of its time`);
  line(`  by processor time: ${plain(byCpu("read_csv"))} of read_csv, ${plain(byCpu("row inserts"))} of row inserts`);
  if (!outcomes.product) {
    unmeasured(`${layout} import`, "it did not succeed");
    return;
  }
  const rate = readings / of("product", (each) => each.ms) / 1000;
  if (outcomes.read_csv) {
    const limit = layout === "wide" ? 1 : 0.5;
    target({
      what: `${layout} import / read_csv into a table`,
      figure: ratio("product", "read_csv"),
      limit,
      unit: "of its time",
    });
  } else unmeasured(`${layout} import / read_csv into a table`, "the peer did not run");
  target({
    what: `${layout} import / row inserts`,
    figure: ratio("product", "row inserts"),
    limit: 0.25,
    unit: "of their time",
  });
  target({ what: `${layout} import`, figure: rate, limit: 3, atLeast: true, unit: "M readings/s" });
  const bytes = of("product", (each) => each.bytes);
  target({ what: `${layout}: on disk`, figure: bytes / readings, limit: 1.3, unit: "bytes/reading" });
  target({
    what: `${layout}: on disk / rows`,
    figure: bytes / of("row inserts", (each) => each.bytes),
    limit: 0.1,
    unit: "of their bytes",
  });
  target({ what: `${layout}: peak memory`, figure: of("product", (each) => each.peakMb), limit: 350, unit: "MB" });
}
