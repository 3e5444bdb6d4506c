import { spawn } from "node:child_process";
import { once } from "node:events";
import { setTimeout as wait } from "node:timers/promises";

/** Starts a script of test/support, waits until it says that it is at work, and kills it `afterMs` later. */
export async function runAndKill(script: string, args: string[], afterMs: number): Promise<void> {
  const child = spawn(process.execPath, ["--import", "tsx", `test/support/${script}.ts`, ...args], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  let complaint = "";
  child.stderr.on("data", (data) => {
    complaint += data;
  });
  const exited = once(child, "exit");
  const first = await Promise.race([once(child.stdout, "data"), exited]);
  if (String(first[0]).trim() !== "ready") throw new Error(`${script} did not start: ${complaint}`);
  await wait(afterMs);
  child.kill("SIGKILL");
  const [, signal] = await exited;
  if (signal !== "SIGKILL") throw new Error(`${script} ended by itself: ${complaint}`);
}
