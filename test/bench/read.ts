import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { openTrendStore } from "@/db/trends/store";
import { syntheticYear } from "../support/synthetic-trends";
import { agree } from "./agree";
import { printCircumstances } from "./circumstances";
import { runContender } from "./contender";
import type { ReadInput, ReadOutcome } from "./contenders/read-product";
import { ByteWriter } from "./data/byte-writer";
import { median } from "./median";
import { line, target, unmeasured } from "./targets";

const ZONES = 60;

/** The questions that pages put to a year of 60 zones: to the store and, in SQL, to a column store with the same rows. */
export async function benchRead(args: string[]): Promise<void> {
  printCircumstances();
  const folder = mkdtempSync(path.join(process.env.BENCH_FOLDER ?? tmpdir(), "bench-read-"));
  try {
    const input = await writeYear(folder);
    const [ours, theirs]: [ReadOutcome[], ReadOutcome[]] = [[], []];
    let reason = "";
    for (let round = 0; round < (args.includes("--quick") ? 1 : 5); round++) {
      ours.push(await runContender<ReadOutcome>("read-product", input));
      const peer = await runContender<ReadOutcome>("read-duckdb", input).catch((error: Error) => error);
      if (peer instanceof Error) reason = peer.message.split("\n").slice(0, 3).join(" ");
      else theirs.push(peer);
    }
    report(ours, theirs, reason);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The same readings as a trend store and as a file of rows. */
async function writeYear(folder: string): Promise<ReadInput> {
  const slices = [...syntheticYear({ zones: ZONES, days: 365, seed: 1 })];
  const [store, csv] = [path.join(folder, "trend.db"), path.join(folder, "readings.csv")];
  const trends = openTrendStore(store);
  const { added } = await trends.write(slices, 1);
  trends.close();
  const out = new ByteWriter(csv);
  for (const { series, ts, v } of slices) {
    const [zone, kind] = [Math.floor((series - 1) / 3), ((series - 1) % 3) + 1];
    for (let i = 0; i < ts.length; i++) out.text(`${zone},${kind},${ts[i]},${v[i]}\n`);
  }
  out.close();
  line(`\n${added} readings of ${ZONES} zones, in the store and as rows`);
  return { store, csv, database: path.join(folder, "rows.duckdb"), zones: ZONES, firstTs: slices[0]?.ts[0] ?? 0 };
}

const QUESTIONS = [
  ["zoneMs", "zone", "degree-hours of a zone's year"],
  ["allMs", "all", `degree-hours of ${ZONES} zones`],
  ["asOfMs", "asOf", "two readings at each of 5,000 reports"],
  ["latestMs", "latest", "latest of all 180 points"],
] as const;

function report(ours: ReadOutcome[], theirs: ReadOutcome[], reason: string): void {
  const ms = (all: ReadOutcome[], key: (typeof QUESTIONS)[number][0] | "loopMs") =>
    median(all.map((each) => each[key]));
  for (const [key, answer, what] of QUESTIONS) {
    const ratio = median(ours.map((each, i) => each[key] / (theirs[i]?.[key] ?? Number.NaN)));
    const peer =
      theirs.length > 0 ? `${ms(theirs, key).toFixed(2).padStart(9)} ms in SQL  ratio ${ratio.toFixed(3)}` : "";
    line(`  ${what.padEnd(40)} ${ms(ours, key).toFixed(3).padStart(9)} ms  ${peer}`);
    for (const each of theirs) agree(what, ours[0]?.answers[answer], each.answers[answer], 1e-6 * each.answers[answer]);
  }
  const loop = median(ours.map((each) => each.zoneMs / each.loopMs));
  line(`  ${"bare loop over a zone's year".padEnd(40)} ${ms(ours, "loopMs").toFixed(3).padStart(9)} ms`);
  line(
    `  first zone-year of a process, nothing compiled: ${median(ours.map((each) => each.coldZoneMs)).toFixed(1)} ms`,
  );
  line(`  peak ${median(ours.map((each) => each.peakMb)).toFixed(0)} MB`);
  target({ what: "zone-year, warm", figure: ms(ours, "zoneMs"), limit: 2, unit: "ms" });
  target({ what: "zone-year / bare loop", figure: loop, limit: 30, unit: "of its time" });
  target({ what: `${ZONES} zones`, figure: ms(ours, "allMs"), limit: 100, unit: "ms" });
  target({ what: "readings at 5,000 reports", figure: ms(ours, "asOfMs"), limit: 150, unit: "ms" });
  target({ what: "latest of all points", figure: ms(ours, "latestMs"), limit: 1, unit: "ms" });
  if (theirs.length === 0) {
    unmeasured("reads / SQL over rows", `the peer did not run: ${reason}`);
    return;
  }
  const share = (key: "zoneMs" | "allMs") =>
    median(ours.map((each, i) => each[key] / (theirs[i]?.[key] ?? Number.NaN)));
  target({ what: "zone-year / SQL over rows", figure: share("zoneMs"), limit: 0.1, unit: "of its time" });
  target({ what: `${ZONES} zones / SQL over rows`, figure: share("allMs"), limit: 0.25, unit: "of its time" });
}
