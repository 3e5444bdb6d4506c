const KEY = Symbol.for("setpoint-ledger.call-limit");
type Window = { startedAtMs: number; calls: number };
const shared = globalThis as typeof globalThis & { [KEY]?: Map<string, Window> };

const WINDOW_MS = 60_000;

/**
 * Counts a call and says how long its caller has to wait when it has used up its minute, else 0. Kept in memory: it
 * holds off a collector that has gone wild, and starting the server anew forgives it.
 */
export function takeCall(caller: string, callsAMinute: number, nowMs: number): number {
  shared[KEY] ??= new Map();
  const windows = shared[KEY];
  for (const [key, each] of windows) if (nowMs - each.startedAtMs >= WINDOW_MS) windows.delete(key);
  const present = windows.get(caller) ?? { startedAtMs: nowMs, calls: 0 };
  if (present.calls >= callsAMinute) return present.startedAtMs + WINDOW_MS - nowMs;
  windows.set(caller, { ...present, calls: present.calls + 1 });
  return 0;
}
