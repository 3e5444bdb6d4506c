import path from "node:path";
import { parseSync } from "vite";
import type { Node } from "./imports-of";

const LONGEST = 350;
const EMPTY_NAMES = ["utils", "util", "helpers", "helper", "misc", "common"];

/** What is wrong with a source file as such: its name says nothing, it only re-exports, or it is too long. */
export function fileFaults(file: string, source: string): string[] {
  const faults: string[] = [];
  const words = file.split("/").flatMap((part) => part.replace(/\.[^.]+$/, "").split(/[-_.]/));
  const empty = words.find((word) => EMPTY_NAMES.includes(word.toLowerCase()));
  if (empty !== undefined) faults.push(`${file}: "${empty}" does not say what is in it; name it for its main export`);

  const lines = source.split("\n").length - (source.endsWith("\n") ? 1 : 0);
  if (lines > LONGEST) faults.push(`${file}: ${lines} lines; over ${LONGEST} look for the seam and split it`);

  if (path.basename(file).startsWith("index.") || onlyReexports(file, source)) {
    faults.push(`${file}: a barrel file; import from the file that has the thing`);
  }
  return faults;
}

function onlyReexports(file: string, source: string): boolean {
  const body = parseSync(file, source).program.body as unknown as Node[];
  const reexports = (node: Node) => node.type.startsWith("Export") && Boolean(node.source);
  return body.length > 0 && body.every(reexports);
}
