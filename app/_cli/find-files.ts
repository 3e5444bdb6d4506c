import { access, constants, stat } from "node:fs/promises";
import path from "node:path";
import { UsageError } from "./usage";

/** Files named on the command line, all of them or none: a path that cannot be read is found before anything is done. */
export async function findFiles(paths: readonly string[]): Promise<{ name: string; bytes: string }[]> {
  if (paths.length === 0) throw new UsageError("Name at least one file.");
  return Promise.all(
    paths.map(async (file) => {
      const isReadable = await Promise.all([stat(file), access(file, constants.R_OK)]).then(
        ([found]) => found.isFile(),
        () => false,
      );
      if (!isReadable) throw new UsageError(`"${file}" cannot be read. Check the path.`);
      return { name: path.basename(file), bytes: file };
    }),
  );
}
