import {
  barParts,
  coldZoneLines,
  componentLines,
  overviewLede,
  summaryItems,
  zoneCostLines,
} from "@/app/buildings/[buildingId]/overview-view-model";
import { standingNote } from "@/app/buildings/[buildingId]/standing-note";
import { belowTargetPct } from "@/app/buildings/[buildingId]/zones/view-model";
import { readBuilding } from "@/lib/services/buildings/find";
import type { Context } from "@/lib/services/context";
import type { Input } from "@/lib/services/kept/inputs";
import { readKeptAll } from "@/lib/services/kept/read-kept";
import { COST } from "@/lib/services/overcooling/shown";
import { shownZones, ZONES } from "@/lib/services/zones/shown";

export type DrawnOverview = { isBehind: boolean; changed: Input[]; workedOutAtMs: number | null; lines: number };

/** All that the overview page does but the markup: reads what it shows and makes the lines of its tables. */
export async function drawOverview(ctx: Context, buildingId: number): Promise<DrawnOverview> {
  const moment = { ...ctx, now: Date.now() };
  const building = readBuilding(moment, buildingId);
  const [cost, zones] = await readKeptAll(moment, buildingId, [{ kind: COST }, { kind: ZONES }]);
  const overview = shownZones(moment, buildingId, zones);
  const note = standingNote(moment, building, { cost, zones });
  const changed = [cost, zones].flatMap(({ behind }) => behind?.changed ?? []);
  const drawn = { isBehind: note !== null, changed, workedOutAtMs: cost.workedOutAtMs };
  const assessment = cost.result?.assessment;
  if (!cost.result || assessment?.status !== "ok") return { ...drawn, lines: 0 };
  const components = componentLines(assessment);
  const costs = zoneCostLines(assessment, overview, building, belowTargetPct);
  const cold = coldZoneLines(overview, costs.lines, building);
  const rest = [
    overviewLede(cost.result, building),
    ...barParts(components.lines),
    ...summaryItems(overview, building),
  ];
  return { ...drawn, lines: components.lines.length + costs.lines.length + cold.length + rest.length };
}
