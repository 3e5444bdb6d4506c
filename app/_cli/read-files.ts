import { readFile } from "node:fs/promises";
import path from "node:path";
import { UsageError } from "./usage";

/** Files named on the command line, all of them or none: a path that cannot be read is found before anything is done. */
export async function readFiles(paths: readonly string[]): Promise<{ name: string; bytes: Uint8Array }[]> {
  if (paths.length === 0) throw new UsageError("Name at least one file.");
  return Promise.all(
    paths.map(async (file) => {
      const bytes = await readFile(file).catch(() => null);
      if (!bytes) throw new UsageError(`"${file}" cannot be read. Check the path.`);
      return { name: path.basename(file), bytes };
    }),
  );
}
