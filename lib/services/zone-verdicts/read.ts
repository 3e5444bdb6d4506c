import { listVerdictNotes, type VerdictNoteRow } from "@/db/queries/verdict-notes";
import { findZone } from "@/db/queries/zones";
import type { MinimumAirflowPrediction } from "@/lib/trends/minimum-airflow-prediction";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import type { ZoneAnalysis } from "../zone-analysis/analyse-zone";
import { predictAtRequiredAirflow } from "../zone-analysis/predict";
import { zoneDataState } from "./data-state";

/** What was said of a verdict, and whether the zone's data are still those of that time. */
export type VerdictNote = Omit<VerdictNoteRow, "dataState"> & { dataChanged: boolean };

export type ZoneVerdictRecord = {
  /** Newest first. */
  notes: VerdictNote[];
  /** Null without a record, or where the zone's minimum or design airflow is not known. */
  prediction: MinimumAirflowPrediction | null;
};

/** What people said of a zone's verdicts, and what a lower minimum airflow would make of the zone as it was analysed. */
export async function readZoneVerdictRecord(
  ctx: Context,
  buildingId: number,
  zoneId: number,
  analysis: ZoneAnalysis | null,
): Promise<ZoneVerdictRecord> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const zone = findZone(ctx.db, buildingId, zoneId);
  if (!zone) throw new ServiceError("not-found", "This zone does not exist.");
  const rows = listVerdictNotes(ctx.db, zoneId);
  const now = rows.length > 0 ? await zoneDataState(ctx, building, zone) : "";
  return {
    notes: rows.map(({ dataState, ...row }) => ({ ...row, dataChanged: dataState !== now })),
    prediction: analysis ? predictAtRequiredAirflow(ctx, building, analysis) : null,
  };
}
