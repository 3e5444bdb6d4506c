import { PREFERENCE_OF_WISH, voteOfWord } from "@/lib/comfort-reports/vote-words";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
import { withContext } from "../context";
import { readArguments, readBuildingId, UsageError } from "../usage";

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
  const buildingId = readBuildingId(values.building);
  const thermalSensation = voteOfWord(values.vote ?? "");
  if (thermalSensation === null)
    throw new UsageError("Give --vote as a number from -3 (cold) to 3 (hot), or as a word of the scale such as cool.");
  const preference = PREFERENCE_OF_WISH.get(
    values.wish ?? (thermalSensation < 0 ? "warmer" : thermalSensation > 0 ? "cooler" : "no-change"),
  );
  if (preference === undefined) throw new UsageError("Give --wish as warmer, cooler or no-change.");
  const reportedAtMs = values.at === undefined ? null : Date.parse(values.at);
  if (Number.isNaN(reportedAtMs) || (values.at !== undefined && !/(Z|[+-]\d\d:\d\d)$/.test(values.at)))
    throw new UsageError("Give --at with its offset, for example 2025-07-01T10:15:00-04:00.");
  const id = await withContext(async (ctx) =>
    logComfortReport(ctx, buildingId, {
      origin: "command-line",
      zoneCode: values.zone,
      deskCode: values.desk,
      thermalSensation,
      preference,
      note: values.note,
      reportedAtMs,
    }),
  );
  process.stdout.write(values.json ? `${JSON.stringify({ building: buildingId, report: id })}\n` : `report ${id}\n`);
  return 0;
}
