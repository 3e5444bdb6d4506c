import { findCollectorToken, listCollectorTokens, updateCollectorToken } from "@/db/queries/collectors";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import type { CollectorView } from "./make";

/** Tokens of a building, newest first; revoked ones stay on record. */
export function listCollectors(ctx: Context, buildingId: number): CollectorView[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listCollectorTokens(ctx.db, buildingId).map(({ tokenHash: _hash, ...shown }) => shown);
}

/** Ends a token at once; what it brought stays. Revoking it again changes nothing. */
export function revokeCollectorToken(ctx: Context, buildingId: number, tokenId: number): void {
  requireFacilities(ctx);
  const row = findCollectorToken(ctx.db, buildingId, tokenId);
  if (!row) throw new ServiceError("not-found", `This building has no token number ${tokenId}.`);
  if (row.revokedAtMs === null) updateCollectorToken(ctx.db, tokenId, { revokedAtMs: ctx.now });
}
