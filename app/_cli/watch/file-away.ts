import { existsSync, mkdirSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { FileReport } from "../file-report";

const PLACE = { imported: "done", unchanged: "done", asked: "asked", refused: "refused" } as const;

/**
 * Moves a file beside the result of its import, which is written first: a process that is killed in between finds the
 * file still in its place, brings it in again without a change, and writes the result anew. Nothing is ever
 * overwritten: a second file of a name gets a number. One that failed stays and is tried again.
 */
export function fileAway(folder: string, name: string, report: FileReport): string | null {
  if (report.outcome === "failed") return null;
  const place = path.join(folder, PLACE[report.outcome]);
  mkdirSync(place, { recursive: true });
  const target = path.join(place, freeName(place, name));
  const draft = path.join(place, `.${path.basename(target)}.result.part`);
  writeFileSync(draft, `${JSON.stringify(report, null, 2)}\n`);
  renameSync(draft, `${target}.result.json`);
  renameSync(path.join(folder, name), target);
  return path.relative(folder, target);
}

function freeName(place: string, name: string): string {
  const { name: stem, ext } = path.parse(name);
  for (let count = 1; ; count++) {
    const candidate = count === 1 ? name : `${stem} (${count})${ext}`;
    if (!existsSync(path.join(place, candidate))) return candidate;
  }
}
