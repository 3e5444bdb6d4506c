import { readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import path from "node:path";

/** Who holds a folder: its process, when that process began (as the system counts it) and since when it watches. */
export type LockHolder = { host: string; pid: number; processBegan: string | null; since: string };

const NAME = ".setpoint-ledger-watch.lock";

/**
 * Takes a folder for one process, or says who holds it. A lock that a killed process left behind is taken over: its
 * process is gone, or another one has its number by now. One of another host is never taken over.
 */
export function takeFolder(folder: string, now: number): { release: () => void } | { heldBy: LockHolder } {
  const file = path.join(folder, NAME);
  const own: LockHolder = {
    host: hostname(),
    pid: process.pid,
    processBegan: processBegan(process.pid),
    since: new Date(now).toISOString(),
  };
  for (;;) {
    try {
      writeFileSync(file, `${JSON.stringify(own)}\n`, { flag: "wx" });
      return { release: () => rmSync(file, { force: true }) };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    }
    const text = contentOf(file);
    if (text === null) continue;
    const holder = readHolder(text);
    if (!holder || isHolding(holder))
      return { heldBy: holder ?? { ...own, host: "unknown", pid: 0, since: "unknown" } };
    takeAway(file, text);
  }
}

/** Removes a lock that was left behind, unless another process has put its own in place meanwhile. */
function takeAway(file: string, left: string): void {
  const aside = `${file}.${process.pid}`;
  try {
    renameSync(file, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return;
    throw error;
  }
  if (contentOf(aside) === left) rmSync(aside, { force: true });
  else renameSync(aside, file);
}

function isHolding({ host, pid, processBegan: began }: LockHolder): boolean {
  if (host !== hostname()) return true;
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ESRCH") return false;
  }
  const present = processBegan(pid);
  return began === null || present === null || began === present;
}

/** When a process began, in the ticks of /proc (field 22 of `stat`); null where there is none. */
function processBegan(pid: number): string | null {
  const stat = contentOf(`/proc/${pid}/stat`);
  return stat?.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? null;
}

function contentOf(file: string): string | null {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return null;
  }
}

function readHolder(text: string): LockHolder | null {
  try {
    const holder = JSON.parse(text) as LockHolder;
    return Number.isSafeInteger(holder.pid) ? holder : null;
  } catch {
    return null;
  }
}
