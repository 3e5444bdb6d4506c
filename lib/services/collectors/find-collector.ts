import { timingSafeEqual } from "node:crypto";
import { findCollectorTokenByHash, updateCollectorToken } from "@/db/queries/collectors";
import type { Actor, Context } from "../context";
import { tokenHashOf } from "./make";

/** The last use of a token is noted once in so long, so that a busy collector does not write at every call. */
const NOTED_EVERY_MS = 60_000;
const NO_TOKEN = tokenHashOf("");

/**
 * The collector that holds a token in force, or null. Looked up by the token's hash, which says nothing of how near a
 * guess came, and compared in constant time.
 */
export function findCollector(
  ctx: Pick<Context, "db" | "now">,
  token: string,
): Extract<Actor, { kind: "collector" }> | null {
  const hash = tokenHashOf(token);
  const row = findCollectorTokenByHash(ctx.db, hash);
  const same = timingSafeEqual(Buffer.from(hash, "hex"), Buffer.from(row?.tokenHash ?? NO_TOKEN, "hex"));
  if (!row || !same || row.revokedAtMs !== null) return null;
  if (row.lastUsedAtMs === null || ctx.now - row.lastUsedAtMs >= NOTED_EVERY_MS)
    updateCollectorToken(ctx.db, row.id, { lastUsedAtMs: ctx.now });
  return { kind: "collector", name: row.collector, tokenId: row.id, buildingId: row.buildingId };
}
