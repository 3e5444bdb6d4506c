import { readFile } from "node:fs/promises";
import { type PastReports, previewPastReports, takePastReports } from "@/lib/services/comfort-reports/import-past";
import { withContext } from "../context";
import { readArguments, readBuildingId, UsageError } from "../usage";

/** `reports import FILE --building ID`: takes past complaints in. 0 all read, 3 rows were left out, 4 refused. */
export async function reportsImport(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, {
    building: { type: "string" },
    "dry-run": { type: "boolean" },
    "date-order": { type: "string" },
    json: { type: "boolean" },
  });
  const buildingId = readBuildingId(values.building);
  const [file, ...more] = positionals;
  if (file === undefined || more.length > 0) throw new UsageError("Name one file of complaints.");
  const order = values["date-order"];
  if (order !== undefined && order !== "mdy" && order !== "dmy")
    throw new UsageError("Give --date-order as mdy or dmy.");
  const bytes = await readFile(file);
  const take = values["dry-run"] ? previewPastReports : takePastReports;
  const past = await withContext(async (ctx) =>
    take(ctx, buildingId, { file: bytes, rule: { dateOrder: order ?? null } }),
  );
  process.stdout.write(values.json ? `${JSON.stringify(past)}\n` : `${linesOf(past).join("\n")}\n`);
  if (past.status === "refused") return 4;
  return past.rows.some(({ fate }) => fate === "rejected" || fate === "ignored") ? 3 : 0;
}

function linesOf(past: PastReports): string[] {
  if (past.status === "refused") return [past.message];
  return [
    ...past.rows.map(
      ({ line, fate, kind, reason }) => `  line ${line}: ${fate}, ${kind}${reason ? `: ${reason}` : ""}`,
    ),
    `${past.rows.filter(({ fate }) => fate === "accepted" || fate === "repaired").length} of ${past.rows.length} rows taken`,
  ];
}
