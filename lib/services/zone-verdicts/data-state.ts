import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listZoneReports } from "@/db/queries/comfort";
import { listDevices } from "@/db/queries/devices";
import { listPoints } from "@/db/queries/points";
import { countDesksByZone, type ZoneRow } from "@/db/queries/zones";
import { fingerprintOf } from "../cached";
import type { Context } from "../context";

/**
 * Hash of the data that a zone's verdict rests on: revisions of its own trends and of the building's, its reports, devices and
 * record, and the building's hours and target. It changes when any of them does, and not when the program does.
 */
export async function zoneDataState(
  ctx: Pick<Context, "db" | "trends">,
  building: BuildingRow,
  zone: ZoneRow,
): Promise<string> {
  const points = listPoints(ctx.db, building.id).filter(({ zoneId }) => zoneId === zone.id || zoneId === null);
  const devices = listDevices(ctx.db, building.id).filter(({ zoneId }) => zoneId === zone.id);
  const { floor, airHandler, designAirflowM3ps, minimumAirflowM3ps } = zone;
  return fingerprintOf({
    points: points.map(({ id, kind, sampling }) => [id, kind, sampling]),
    revisions: await ctx.trends.rev(points.map(({ id }) => id)),
    reports: listZoneReports(ctx.db, zone.id).map(({ id }) => id),
    devices: devices.map(({ id, kind, retiredOn, settings }) => [
      id,
      kind,
      retiredOn,
      settings.map(({ name, hoursPerYear }) => [name, hoursPerYear]),
    ]),
    desks: countDesksByZone(ctx.db, building.id).get(zone.id) ?? 0,
    zone: { floor, airHandler, designAirflowM3ps, minimumAirflowM3ps },
    occupied: findOccupiedHours(ctx.db, building.id),
    targetC: building.targetZoneAirTempC,
    timeZone: building.timeZone,
    systemType: building.systemType,
  });
}
