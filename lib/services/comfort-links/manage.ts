import { randomBytes } from "node:crypto";
import { findComfortLink, insertComfortLink, listComfortLinks, revokeComfortLink } from "@/db/queries/comfort";
import { findDesk, findZone, listDesks, listZones } from "@/db/queries/zones";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

export type ComfortLinkView = {
  id: number;
  token: string;
  zoneId: number;
  zoneCode: string;
  deskCode: string | null;
  createdAtMs: number;
};

/** Makes a link for a zone, or for one desk of it. Whoever holds the link can file a report and nothing else. */
export function issueComfortLink(
  ctx: Context,
  buildingId: number,
  place: { zoneId: number; deskId?: number | null },
): ComfortLinkView {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const zone = findZone(ctx.db, buildingId, place.zoneId);
  if (!zone) throw new ServiceError("invalid", "Choose a zone of this building.", { zoneId: "Choose a zone." });
  const desk = place.deskId ? findDesk(ctx.db, buildingId, place.deskId) : undefined;
  if (place.deskId && desk?.zoneId !== zone.id)
    throw new ServiceError("invalid", "This desk does not stand in that zone.", {
      deskId: "Choose a desk of the zone, or none for the whole zone.",
    });
  const row = insertComfortLink(ctx.db, {
    buildingId,
    zoneId: zone.id,
    deskId: desk?.id ?? null,
    token: randomBytes(16).toString("base64url"),
    createdAtMs: ctx.now,
    createdBy: actorName(actor),
  });
  return {
    id: row.id,
    token: row.token,
    zoneId: zone.id,
    zoneCode: zone.code,
    deskCode: desk?.code ?? null,
    createdAtMs: row.createdAtMs,
  };
}

/** Ends a link: its form answers that the link is no longer in use. Reports already made stay. */
export function endComfortLink(ctx: Context, buildingId: number, linkId: number): void {
  requireFacilities(ctx);
  if (!findComfortLink(ctx.db, buildingId, linkId)) throw new ServiceError("not-found", "This link does not exist.");
  revokeComfortLink(ctx.db, linkId, ctx.now);
}

/** Links in force, with the zone and desk they belong to. */
export function readComfortLinks(ctx: Context, buildingId: number): ComfortLinkView[] {
  requireFacilities(ctx);
  const zones = new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code]));
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  return listComfortLinks(ctx.db, buildingId).map((link) => ({
    id: link.id,
    token: link.token,
    zoneId: link.zoneId,
    zoneCode: zones.get(link.zoneId) ?? "",
    deskCode: link.deskId === null ? null : (desks.get(link.deskId) ?? null),
    createdAtMs: link.createdAtMs,
  }));
}
