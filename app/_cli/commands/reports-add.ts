import { logReportInWords } from "@/lib/services/comfort-reports/log-in-words";
import { withContext } from "../context";
import { readArguments, readBuildingId } from "../usage";

/** `reports add --building ID --vote VOTE`: puts one comfort report on record. */
export async function reportsAdd(args: string[]): Promise<number> {
  const { values } = readArguments(args, {
    building: { type: "string" },
    zone: { type: "string" },
    desk: { type: "string" },
    vote: { type: "string" },
    wish: { type: "string" },
    at: { type: "string" },
    note: { type: "string" },
    json: { type: "boolean" },
  });
  const { building, json, ...typed } = values;
  const buildingId = readBuildingId(building);
  const id = await withContext(async (ctx) => logReportInWords(ctx, buildingId, typed));
  process.stdout.write(json ? `${JSON.stringify({ building: buildingId, report: id })}\n` : `report ${id}\n`);
  return 0;
}
