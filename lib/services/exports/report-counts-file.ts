import { listZones } from "@/db/queries/zones";
import { discloseCounts, LEAST_PEOPLE } from "@/lib/comfort-reports/disclosure/disclose-counts";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { reportCounts } from "../zones/zone-counts";
import { csvText } from "./csv";
import type { ExportedFile } from "./export-building";

const COLUMNS = ["zone", "cold reports", "hot reports"];

/**
 * Comfort reports of a building as counts by zone, to be handed on: a zone with reports of fewer than ten people is not named
 * but counted with others, and what could be told by taking away is blank.
 */
export function reportCountsFile(ctx: Context, buildingId: number): ExportedFile {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const zones = listZones(ctx.db, buildingId);
  const counts = reportCounts(ctx, buildingId, zones);
  const { hidden, together, totals } = discloseCounts(counts, ["cold", "hot"], LEAST_PEOPLE.publication);
  const codes = new Map(zones.map(({ id, code }) => [id, code]));
  const rows = counts
    .filter(({ key, people }) => people > 0 && !hidden.has(key))
    .map(({ key, counts: { cold, hot } }) => [codes.get(key) ?? "", cold, hot]);
  return {
    fileName: "comfort-report-counts.csv",
    text: csvText(COLUMNS, [
      ...rows,
      ...(hidden.size > 0 ? [[`${hidden.size} zones together`, together.cold, together.hot]] : []),
      ["all zones", totals.cold, totals.hot],
    ]),
  };
}
