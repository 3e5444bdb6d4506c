import { inTransaction } from "@/db/client";
import { insertComfortReport } from "@/db/queries/comfort";
import { deleteHeldReport, findHeldReport, listHeldReports } from "@/db/queries/held-reports";
import { listDesks, listZones } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { type ComfortReportValues, reportColumns, reportInput } from "./report-input";

export type HeldReportView = {
  id: number;
  heldAtMs: number;
  zoneCode: string;
  deskCode: string | null;
  sent: ComfortReportValues;
};

/** Reports that were kept aside in a flood, newest first. */
export function readHeldReports(ctx: Context, buildingId: number): HeldReportView[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const zones = new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code]));
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  return listHeldReports(ctx.db, buildingId).map(({ held, zoneId, deskId }) => ({
    id: held.id,
    heldAtMs: held.heldAtMs,
    zoneCode: zones.get(zoneId) ?? "",
    deskCode: deskId === null ? null : (desks.get(deskId) ?? null),
    sent: reportInput.parse(JSON.parse(held.sent)),
  }));
}

/**
 * Decides on a report that was kept aside: taken in, it counts from the moment at which it was sent, under the address that
 * its sender has; dropped, it is deleted.
 */
export function decideHeldReport(ctx: Context, buildingId: number, heldId: number, decision: "take" | "drop"): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  inTransaction(ctx.db, (tx) => {
    const found = findHeldReport(tx, buildingId, heldId);
    if (!found) throw new ServiceError("not-found", "This report is no longer kept aside.");
    const { held, zoneId, deskId } = found;
    deleteHeldReport(tx, heldId);
    if (decision === "drop") return;
    const { linkId, followToken, heldAtMs: reportedAtMs } = held;
    const sent = reportColumns(reportInput.parse(JSON.parse(held.sent)));
    insertComfortReport(tx, { ...sent, buildingId, zoneId, deskId, linkId, followToken, reportedAtMs });
  });
}
