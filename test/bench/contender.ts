import { spawn } from "node:child_process";
import path from "node:path";

/**
 * What a contender tells at its end: the time of its work, the processor time of all its threads (which other work on the
 * machine moves less), its own peak memory, and figures of its own.
 */
export type Outcome = { ms: number; cpuMs: number; peakMb: number; [figure: string]: unknown };

const FOLDER = path.join(import.meta.dirname, "contenders");

/**
 * Runs one contender in a process of its own, so that no other's memory, cache or warmed-up code is its own. The script
 * gets `input` as JSON and writes its outcome as its last line.
 */
export async function runContender<O extends Outcome>(
  script: string,
  input: unknown,
): Promise<O & { processMs: number }> {
  const start = performance.now();
  const child = spawn(process.execPath, ["--import", "tsx", path.join(FOLDER, `${script}.ts`), JSON.stringify(input)], {
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, NODE_OPTIONS: "" },
  });
  const [out, err]: [string[], string[]] = [[], []];
  child.stdout.setEncoding("utf8").on("data", (text) => out.push(text));
  child.stderr.setEncoding("utf8").on("data", (text) => err.push(text));
  const code = await new Promise((resolve) => child.on("close", resolve));
  if (code !== 0) throw new Error(`${script} ended with ${code}:\n${err.join("").slice(-2000)}`);
  const last = out.join("").trimEnd().split("\n").at(-1) ?? "";
  return { ...(JSON.parse(last) as O), processMs: performance.now() - start };
}
