import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { printCircumstances } from "./circumstances";
import { runContender } from "./contender";
import type { LoadInput, LoadOutcome, Watched } from "./contenders/load-server";
import { addBuilding, addWeather, makeDataFolder } from "./data/data-folder";
import { TYPICAL, writeTrendFile } from "./data/trend-file";
import { line, target } from "./targets";

/** Years that are brought in one after the other: a p99 of the hundred reports of one year's second would be their longest. */
const YEARS = 5;

/** What people at a page and at the report form notice while the server's worker imports years of 60 zones. */
export async function benchLoad(args: string[]): Promise<void> {
  printCircumstances();
  const folder = mkdtempSync(path.join(process.env.BENCH_FOLDER ?? tmpdir(), "bench-load-"));
  try {
    const dataFolder = path.join(folder, "data");
    makeDataFolder(dataFolder, TYPICAL.zones);
    addBuilding(dataFolder, TYPICAL.zones);
    addWeather(dataFolder);
    const days = args.includes("--quick") ? 60 : 365;
    const write = (name: string, fromDay: number, toDay: number) =>
      writeTrendFile(path.join(folder, `${name}.csv`), { layout: "wide", ...TYPICAL, fromDay, toDay });
    const before = write("before", 0, days - 15);
    const years = Array.from({ length: YEARS }, (_, k) => write(`year-${k + 1}`, k * days, (k + 1) * days));
    const files = years.map(({ file }) => file);
    const input: LoadInput = { dataFolder, before: before.file, files, idleMs: 5000 };
    const done = await runContender<LoadOutcome>("load-server", input);
    if (done.states.some((state) => state !== "done"))
      throw new Error(`the imports ended as ${done.states.join(", ")}`);
    const readings = years.reduce((sum, year) => sum + year.readings, 0);
    report(done, readings);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function report({ ms, peakMb, idle, otherBuilding, sameBuilding }: LoadOutcome, readings: number): void {
  line(
    `\n${readings} readings through the worker in ${(ms / 1000).toFixed(1)} s; server process at most ${peakMb.toFixed(0)} MB`,
  );
  const row = (name: string, seen: Watched) =>
    line(
      `  ${name.padEnd(34)} report p99 ${seen.reportP99.toFixed(2)} max ${seen.reportMax.toFixed(2)} ms (${seen.reports}; without waits for a core p99 ${seen.reportOwnP99?.toFixed(2) ?? "not known"})  ` +
        `overview p95 ${seen.overviewP95.toFixed(1)} max ${seen.overviewMax.toFixed(1)} ms (${seen.overviews}, ${seen.behind} of the last result, worked out ${seen.workedOut} times)  ` +
        `event loop p99 ${seen.loopP99.toFixed(1)} max ${seen.loopMax.toFixed(1)} ms (without waits for a core ${seen.loopOwnMax.toFixed(1)}), of a bare process beside it max ${seen.bareLoopMax.toFixed(1)} ms`,
    );
  row("no import", idle);
  row("import into another building", otherBuilding);
  row("import into the building looked at", sameBuilding);
  line(
    "  (the overview is all that its page does but the markup; with a report every 10 ms it is behind most of the time)",
  );
  target({ what: "report insert during an import, p99", figure: otherBuilding.reportP99, limit: 5, unit: "ms" });
  target({ what: "event loop during an import, longest delay", figure: otherBuilding.loopMax, limit: 50, unit: "ms" });
  const slower = otherBuilding.overviewP95 / idle.overviewP95;
  target({ what: "overview during an import, p95", figure: slower, limit: 2, unit: "of its idle p95" });
  target({ what: "report insert, same building, p99", figure: sameBuilding.reportP99, limit: 5, unit: "ms" });
  target({ what: "event loop, same building, longest delay", figure: sameBuilding.loopMax, limit: 50, unit: "ms" });
}
