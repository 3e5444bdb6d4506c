import { spawnSync } from "node:child_process";
import path from "node:path";
import type { FitInput } from "../data/meter-years";
import { contend } from "./contend";

/** The same fits by scipy, in Python: by its brute grid or by descent. Fails when there is no Python with scipy. */
await contend<FitInput & { method: "grid" | "descent" }>(async ({ file, meters, points, method }) => {
  const script = path.join(import.meta.dirname, "fit-scipy.py");
  const run = spawnSync("python3", [script, file, String(meters), String(points), method], { encoding: "utf8" });
  if (run.error) throw run.error;
  if (run.status !== 0) throw new Error(run.stderr.trim().split("\n").at(-1));
  return JSON.parse(run.stdout) as { ms: number; cpuMs: number; sse: (number | null)[] };
});
