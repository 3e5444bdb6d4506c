import { randomUUID } from "node:crypto";
import { hostname } from "node:os";
import type { Context } from "../context";
import type { HeldReading, ReadAhead } from "./read-ahead";

/** Somebody who works on imports: a thread of the server, or a command. */
export type Work = {
  /** Host, process and a name of its own, so that others can tell whether it is still there. */
  owner: string;
  /** Epoch milliseconds as the work goes on; `ctx.now` stands still. */
  clock(): number;
  /** The readings of the file that was inspected last, for the import that may follow at once. */
  held?: (HeldReading & { runId: number }) | null;
  /** The file that is being read before it has a run. */
  ahead?: { fileName: string; sha256: string; reading: ReadAhead } | null;
};

/** A sign of life older than this is none [ms]. A stretch of a file takes far less. */
export const LIFE_SIGN_MS = 60_000;

export const newOwner = (): string => `${hostname()}/${process.pid}/${randomUUID()}`;

/** Work done where it is asked for; its clock goes on from the context's. */
export function workInline(ctx: Pick<Context, "now">): Work {
  const begun = performance.now();
  return { owner: newOwner(), clock: () => ctx.now + Math.round(performance.now() - begun) };
}

/**
 * Whether the owner of a run is gone: its process ended, or it has given no sign of life for a minute. A process of our
 * own number that was heard of before we started was another one.
 */
export function isGone(owner: string | null, heartbeatAtMs: number | null, now: number): boolean {
  if (owner === null) return true;
  const silentMs = now - (heartbeatAtMs ?? 0);
  const [host, pid] = owner.split("/");
  if (host === hostname()) {
    if (Number(pid) === process.pid) return silentMs > Math.min(LIFE_SIGN_MS, process.uptime() * 1000);
    if (!isRunning(Number(pid))) return true;
  }
  return silentMs > LIFE_SIGN_MS;
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process of somebody else's may not be asked, but is there.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
