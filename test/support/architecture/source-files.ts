import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

const PROJECT = path.join(import.meta.dirname, "..", "..", "..");

/** TypeScript sources under the folders given, with their paths from the project's folder. */
export function sourceFiles(...folders: string[]): { file: string; source: string }[] {
  return folders.flatMap((folder) =>
    readdirSync(path.join(PROJECT, folder), { recursive: true, encoding: "utf8" })
      .map((name) => path.posix.join(folder, name.split(path.sep).join("/")))
      .filter((file) => /\.(ts|tsx|mts)$/.test(file) && !file.endsWith(".d.ts"))
      .sort()
      .map((file) => ({ file, source: readFileSync(path.join(PROJECT, file), "utf8") })),
  );
}
