import { listDesks, listZones } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";

/** Zones and desks to choose from. */
export type Places = {
  zones: { id: number; code: string; label: string }[];
  desks: { id: number; code: string; zoneId: number; zoneCode: string }[];
};

export function readPlaces(ctx: Context, buildingId: number): Places {
  requireFacilities(ctx);
  const zones = listZones(ctx.db, buildingId);
  const codes = new Map(zones.map((zone) => [zone.id, zone.code]));
  return {
    zones: zones.map(({ id, code, name }) => ({ id, code, label: name ? `${code}, ${name}` : code })),
    desks: listDesks(ctx.db, buildingId).map(({ id, code, zoneId }) => ({
      id,
      code,
      zoneId,
      zoneCode: codes.get(zoneId) ?? "",
    })),
  };
}
