import { listBuildingDeviceEvents, listDeviceKinds } from "@/db/queries/devices";
import { listZones } from "@/db/queries/zones";
import type { DeviceKind } from "@/lib/electrical/device-kind";
import { type RemovalPoint, removalHistory } from "@/lib/electrical/removal-history";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { groupBy } from "../group-by";

export type ZoneRemovals = { zoneId: number; zoneCode: string; points: RemovalPoint[] };

/** What was removed and came back of one kind of device: of the building, and of every zone that had one. */
export function readRemovals(
  ctx: Context,
  buildingId: number,
  kind: DeviceKind,
): { building: RemovalPoint[]; zones: ZoneRemovals[] } {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const kinds = listDeviceKinds(ctx.db, buildingId);
  const events = listBuildingDeviceEvents(ctx.db, buildingId).filter(({ deviceId }) => kinds.get(deviceId) === kind);
  const byZone = groupBy(events, ({ zoneId }) => zoneId);
  const zones = listZones(ctx.db, buildingId).flatMap(({ id, code }) => {
    const steps = byZone.get(id);
    return steps ? { zoneId: id, zoneCode: code, points: removalHistory(steps) } : [];
  });
  return { building: removalHistory(events), zones };
}
