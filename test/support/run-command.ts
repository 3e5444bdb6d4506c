import { spawn } from "node:child_process";
import { once } from "node:events";

export type CommandResult = { code: number; out: string; complaint: string };

/** Runs a command line as a person would, in a process of its own on a data folder of its own. */
export async function runCommand(dataFolder: string, ...args: string[]): Promise<CommandResult> {
  const child = spawn(process.execPath, ["--import", "tsx", "app/_cli/main.ts", ...args], {
    env: { ...process.env, SETPOINT_LEDGER_DATA: dataFolder },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const result = { out: "", complaint: "" };
  child.stdout.on("data", (data) => {
    result.out += data;
  });
  child.stderr.on("data", (data) => {
    result.complaint += data;
  });
  const [code] = await once(child, "close");
  return { code, ...result };
}
