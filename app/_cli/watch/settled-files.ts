import { readdirSync, statSync } from "node:fs";
import path from "node:path";

/** Size and time of last change of the files that lie in a folder, by name. */
export type Look = ReadonlyMap<string, { size: number; mtimeMs: number }>;

const PASSING = /(^\.|~$|\.(part|partial|tmp|temp|crdownload|filepart)$)/i;

/** Files of a folder that may be trend files: no folders, no hidden names, none that their writer marks as passing. */
export function lookInto(folder: string): Look {
  const look = new Map<string, { size: number; mtimeMs: number }>();
  for (const name of readdirSync(folder)) {
    if (PASSING.test(name)) continue;
    const found = statSync(path.join(folder, name), { throwIfNoEntry: false });
    if (found?.isFile()) look.set(name, { size: found.size, mtimeMs: found.mtimeMs });
  }
  return look;
}

/** Files that were the same at two looks: nobody writes to them any more. In the order of their names. */
export function settledFiles(before: Look, now: Look): string[] {
  const same = [...now].filter(([name, { size, mtimeMs }]) => {
    const then = before.get(name);
    return then?.size === size && then.mtimeMs === mtimeMs;
  });
  return same.map(([name]) => name).sort((a, b) => a.localeCompare(b, "en"));
}
