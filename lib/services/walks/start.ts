import { endWalk, findOpenWalk, findWalk, insertWalk } from "@/db/queries/walks";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** Begins a walk through the building; one that is open goes on. Returns its id. */
export function startWalk(ctx: Context, buildingId: number): number {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const open = findOpenWalk(ctx.db, buildingId);
  return open?.id ?? insertWalk(ctx.db, { buildingId, startedAtMs: ctx.now, startedBy: actorName(actor) }).id;
}

/** Ends a walk: the next one begins with every desk to be seen. Entries that come late are still taken. */
export function finishWalk(ctx: Context, buildingId: number, walkId: number): void {
  requireFacilities(ctx);
  if (!findWalk(ctx.db, buildingId, walkId)) throw new ServiceError("not-found", "This walk does not exist.");
  endWalk(ctx.db, walkId, ctx.now);
}
