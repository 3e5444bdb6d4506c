import type { BuildingRow } from "@/db/queries/buildings";
import { type DeviceWithSettings, listDevices } from "@/db/queries/devices";
import { listPoints } from "@/db/queries/points";
import { countDesksByZone, listZones } from "@/db/queries/zones";
import { isVav } from "@/lib/assumptions/system-type";
import { airHandlerEvidence, type ServedZone } from "@/lib/trends/diagnosis/air-handler-evidence";
import { neighbourEvidence } from "@/lib/trends/diagnosis/neighbour-evidence";
import type { ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import type { Context } from "../context";
import { groupBy } from "../group-by";
import type { BuildingAnalysis } from "./read";
import { reportEvidence } from "./report-evidence";

/** Settings of a heater in which it gives no heat. */
const WITHOUT_HEAT: readonly string[] = ["off", "fan-only"];

/** All that the diagnosis of each recorded zone of a building rests on, by zone id. */
export async function collectEvidence(
  ctx: Context,
  building: BuildingRow,
  { zones: analyses, record }: BuildingAnalysis,
  seasonThresholdC: number,
): Promise<Map<number, ZoneEvidence>> {
  if (!record) return new Map();
  const rows = new Map(listZones(ctx.db, building.id).map((zone) => [zone.id, zone]));
  const { byZone: reports, years: reportYears } = await reportEvidence(ctx, building.id, record, seasonThresholdC);
  const desks = countDesksByZone(ctx.db, building.id);
  const heaters = groupBy(
    listDevices(ctx.db, building.id).filter((device) => device.kind === "space-heater" && device.retiredOn === null),
    (device) => device.zoneId,
  );
  const ownSupplyAir = new Set(
    listPoints(ctx.db, building.id).flatMap(({ kind, zoneId }) => (kind === "supply-air-temp" ? (zoneId ?? []) : [])),
  );
  const statistics = analyses.map((analysis) => analysis.statistics);
  const served = analyses.map((analysis): ServedZone & { zoneId: number } => {
    const { zoneId, exposure } = analysis;
    const here = heaters.get(zoneId) ?? [];
    const zone: ZoneEvidence = {
      zoneCode: rows.get(zoneId)?.code ?? "",
      exposure,
      statistics: analysis.statistics,
      reports: reports.get(zoneId) ?? [],
      deskCount: desks.get(zoneId) ?? 0,
      reportYears,
      neighbours: neighbourEvidence(zoneId, statistics),
      offset: analysis.offset,
      limits: analysis.limits,
      minimumAirflowOrigin: analysis.minimumAirflowOrigin,
      heaterCount: here.length,
      heaterHoursPerYear: here.reduce((sum, device) => sum + heatingHours(device), 0),
      heaterJumps: analysis.heaterJumps,
      singleZone: exposure.hasTrend.coolingStage || !isVav(building.systemType),
      airHandler: null,
    };
    return {
      zoneId,
      zone,
      airHandler: rows.get(zoneId)?.airHandler ?? "",
      ownSupplyAir: ownSupplyAir.has(zoneId),
    };
  });
  const handlers = airHandlerEvidence(served.filter(({ zone }) => !zone.singleZone));
  return new Map(
    served.map(({ zoneId, zone }) => [zoneId, { ...zone, airHandler: handlers.get(zone.zoneCode) ?? null }]),
  );
}

const heatingHours = ({ settings }: DeviceWithSettings): number =>
  settings.reduce((sum, { name, hoursPerYear }) => sum + (WITHOUT_HEAT.includes(name) ? 0 : hoursPerYear), 0);
