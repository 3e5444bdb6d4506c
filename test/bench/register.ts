import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { printCircumstances } from "./circumstances";
import { runContender } from "./contender";
import type { RegisterOutcome } from "./contenders/register-read";
import { makeDataFolder } from "./data/data-folder";
import { line, target } from "./targets";

/** What a page of the register asks of the server at 5,000 devices: filters, orders and groups, each from the database on. */
export async function benchRegister([devices = "5000"]: string[]): Promise<void> {
  printCircumstances();
  const folder = mkdtempSync(path.join(process.env.BENCH_FOLDER ?? tmpdir(), "bench-register-"));
  try {
    makeDataFolder(folder, 60);
    const outcome = await runContender<RegisterOutcome>("register-read", {
      dataFolder: folder,
      devices: Number(devices),
    });
    line(`\n${devices} devices; rows alone, read and walked once: ${outcome.bareMs.toFixed(0)} ms of processor time`);
    line(`the first page after a start, every figure worked out: ${outcome.firstMs.toFixed(0)} ms by the clock`);
    for (const { what, cpuMs, wallMs, afterWriteMs, rows } of outcome.reads) {
      line(
        `  ${what.padEnd(44)} ${cpuMs.toFixed(0)} ms of processor time, ${wallMs.toFixed(0)} ms by the clock, ${afterWriteMs.toFixed(0)} ms right after a write; ${rows} rows`,
      );
      target({
        what: `register: ${what}, right after a write`,
        figure: afterWriteMs,
        limit: 150,
        unit: "ms of processor time",
      });
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
