import { appendFileSync, copyFileSync, cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { seededRandom } from "@/lib/statistics/random";
import { storedChunks } from "../support/stored-chunks";
import { agree } from "./agree";
import { runContender } from "./contender";
import type { StoredOutcome } from "./contenders/import-stored";
import type { ProductOutcome } from "./contenders/product-outcome";
import { type TrendFileShape, TYPICAL, writeTrendFile } from "./data/trend-file";
import type { Workplace } from "./import";
import { median } from "./median";
import { line, target } from "./targets";

/** Days that come in night after night: the server's thread, or the command that watches a folder, has taken those before it. */
const NIGHTS = 12;

/**
 * What comes after a first import: the same file, the same readings in a file of other bytes, 30 days of which 15 are
 * there, one more day, the first of its process and one of many; and the year with its rows in any order.
 */
export async function benchAgain(place: Workplace, rounds: number): Promise<void> {
  const make = (name: string, shape: Partial<TrendFileShape>) =>
    writeTrendFile(path.join(place.folder, `${name}.csv`), { layout: "wide", ...TYPICAL, ...shape });
  const year = make("year", { stamps: "offset" });
  const otherBytes = path.join(place.folder, "year-other-bytes.csv");
  copyFileSync(year.file, otherBytes);
  appendFileSync(otherBytes, "\n");
  const overlapping = make("overlapping", { stamps: "offset", fromDay: 350, toDay: 380 });
  const days = Array.from({ length: NIGHTS }, (_, k) =>
    make(`day-${k + 1}`, { stamps: "offset", fromDay: 365 + k, toDay: 366 + k }),
  );
  const shuffled = shuffledRows(year.file, path.join(place.folder, "shuffled.csv"));
  line(`\nafter a first import of ${year.readings} readings (wide, stamps with offset); ${rounds} rounds`);

  const outcomes: Record<string, ProductOutcome[]> = {};
  const stored: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const first = place.freshDataFolder();
    const run = async (name: string, dataFolder: string, files: string[], script = "import-product") => {
      const done = await runContender<ProductOutcome>(script, { dataFolder, files });
      outcomes[name] = [...(outcomes[name] ?? []), done];
      return done;
    };
    const withCopy = async <T>(work: (dataFolder: string) => Promise<T>): Promise<T> => {
      const copy = `${first}-copy`;
      cpSync(first, copy, { recursive: true });
      const done = await work(copy);
      rmSync(copy, { recursive: true });
      return done;
    };
    const onCopy = (name: string, files: string[], script?: string) =>
      withCopy((dataFolder) => run(name, dataFolder, files, script));
    agree("readings of the first import", (await run("first", first, [year.file])).samples?.added, year.readings);
    agree("outcome of the very same file", (await onCopy("very same file", [year.file])).outcome, "unchanged");
    const again = await onCopy("same readings again", [otherBytes]);
    agree("readings found the same", again.samples?.same, year.readings);
    const over = await onCopy("30 days, 15 there", [overlapping.file]);
    agree(
      "readings of the overlapping file",
      (over.samples?.added ?? 0) + (over.samples?.same ?? 0),
      overlapping.readings,
    );
    const nights = days.map((each) => each.file);
    await onCopy("one more day, first", nights.slice(0, 1));
    await onCopy("one more command", nights);
    const day = await onCopy("one more day", nights, "import-watched");
    agree("readings of one more day", day.samples?.added, days.at(-1)?.readings);
    const read = await withCopy((dataFolder) =>
      runContender<StoredOutcome>("import-stored", { dataFolder, files: nights }),
    );
    agree("readings of one more day, read and stored", read.added, days.at(-1)?.readings);
    agree("rows of one more day", read.rowsInFile, days.at(-1)?.rows);
    stored.push(read.ms);
    const mixed = place.freshDataFolder();
    await run("rows in any order", mixed, [shuffled]);
    const [ordered, unordered] = [first, mixed].map((folder) => storedChunks(path.join(folder, "trend.db")));
    agree("chunks of ordered and shuffled rows", JSON.stringify(unordered) === JSON.stringify(ordered), true);
    for (const folder of [first, mixed]) rmSync(folder, { recursive: true });
  }
  report(outcomes, median(stored));
}

/** `storedMs`: one more day, read and stored. */
function report(outcomes: Record<string, ProductOutcome[]>, storedMs: number): void {
  const ms = (name: string) => median((outcomes[name] ?? []).map((each) => each.ms));
  const ofFirst = (name: string) =>
    median((outcomes[name] ?? []).map((each, round) => each.ms / (outcomes.first?.[round]?.ms ?? Number.NaN)));
  for (const [name, all] of Object.entries(outcomes)) {
    const { samples, chunksWritten } = all[0] as ProductOutcome;
    const counts = samples
      ? `${samples.added} added, ${samples.changed} changed, ${samples.same} same`
      : "nothing to do";
    line(
      `  ${name.padEnd(20)} ${ms(name).toFixed(0).padStart(6)} ms  ${ofFirst(name).toFixed(2)} of the first  ` +
        `${chunksWritten} chunks written  ${counts}  peak ${median(all.map((each) => each.peakMb)).toFixed(0)} MB`,
    );
  }
  const chunks = (name: string) => Math.max(...(outcomes[name] ?? []).map((each) => each.chunksWritten));
  target({
    what: "same readings again",
    figure: ofFirst("same readings again"),
    limit: 1,
    unit: "of the first import",
  });
  target({ what: "same readings again", figure: chunks("same readings again"), limit: 0, unit: "chunks written" });
  // Without what an import does beside: its copy, its mapping, the queue and the record of it.
  target({ what: "one more day of 180 points, read and stored", figure: storedMs, limit: 60, unit: "ms" });
  target({ what: "rows in any order", figure: ofFirst("rows in any order"), limit: 5, unit: "of the ordered import" });
}

/** The same file with its rows in another order; small enough to be held. */
function shuffledRows(file: string, to: string): string {
  const [heading, ...rows] = readFileSync(file, "utf8").trimEnd().split("\n");
  const random = seededRandom(3);
  for (let i = rows.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [rows[i], rows[j]] = [rows[j] as string, rows[i] as string];
  }
  writeFileSync(to, `${[heading, ...rows].join("\n")}\n`);
  return to;
}
