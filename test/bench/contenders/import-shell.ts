import { spawn } from "node:child_process";
import { readFileSync, rmSync, statSync } from "node:fs";
import { contend, timed } from "./contend";

/** A trend file by `.import` of the sqlite3 shell, all of it text; `missing` when there is no such program. */
await contend<{ file: string; database: string }>(async ({ file, database }) => {
  rmSync(database, { force: true });
  let [peakMb, missing] = [0, false];
  const ms = await timed(
    () =>
      new Promise<void>((resolve, reject) => {
        const shell = spawn("sqlite3", [database, ".mode csv", `.import '${file}' trend`], { stdio: "ignore" });
        const watch = setInterval(() => {
          peakMb = Math.max(peakMb, peakOf(shell.pid));
        }, 10);
        const end = (done: () => void) => {
          clearInterval(watch);
          done();
        };
        shell.on("error", (error: NodeJS.ErrnoException) => {
          missing = error.code === "ENOENT";
          end(missing ? resolve : () => reject(error));
        });
        shell.on("exit", (code) => end(code === 0 ? resolve : () => reject(new Error(`sqlite3 ended with ${code}`))));
      }),
  );
  return { ms, peakMb, cpuMs: Number.NaN, missing, bytes: missing ? 0 : statSync(database).size };
});

/** Peak memory of another process so far [MB], as the kernel keeps it; 0 where it does not. */
function peakOf(pid: number | undefined): number {
  try {
    return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}
