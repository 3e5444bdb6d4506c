import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { exportBuilding as filesOf } from "@/lib/services/exports/export-building";
import { withContext } from "../context";
import { readArguments, readBuildingId } from "../usage";

/** `export ID [--out FOLDER]`: writes what is on record of a building as CSV and JSON files. */
export async function exportBuilding(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, { out: { type: "string" }, json: { type: "boolean" } });
  const buildingId = readBuildingId(positionals[0]);
  const files = await withContext((ctx) => filesOf(ctx, buildingId));
  const folder = path.resolve(values.out ?? `export-${buildingId}`);
  await mkdir(folder, { recursive: true });
  for (const { fileName, text } of files) await writeFile(path.join(folder, fileName), text);
  const names = files.map(({ fileName }) => fileName);
  process.stdout.write(
    values.json
      ? `${JSON.stringify({ building: buildingId, folder, files: names })}\n`
      : `${names.length} files written to ${folder}:\n${names.map((name) => `  ${name}\n`).join("")}`,
  );
  return 0;
}
