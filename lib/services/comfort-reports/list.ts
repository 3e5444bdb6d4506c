import { type ComfortReportRow, listComfortReports } from "@/db/queries/comfort";
import { listDesks, listZones } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";

export type ComfortReportView = ComfortReportRow & { zoneCode: string; deskCode: string | null };

/** Comfort reports of a building with the codes of zone and desk, newest first. */
export function readComfortReports(ctx: Context, buildingId: number): ComfortReportView[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const zones = new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code]));
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  return listComfortReports(ctx.db, buildingId).map((report) => ({
    ...report,
    zoneCode: zones.get(report.zoneId) ?? "",
    deskCode: report.deskId === null ? null : (desks.get(report.deskId) ?? null),
  }));
}
