import { createHash, randomBytes } from "node:crypto";
import { z } from "zod";
import { type CollectorTokenRow, insertCollectorToken } from "@/db/queries/collectors";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { parseInput } from "../parse";

const collectorInput = z.object({
  collector: z
    .string()
    .trim()
    .min(1, "Name the program or the export that will use the token.")
    .max(80, "Keep the name under 80 characters."),
});

/** A token as it may be shown: never the token itself. */
export type CollectorView = Omit<CollectorTokenRow, "tokenHash">;

/**
 * Makes a token with which a program can bring trend files and readings to one building and do nothing else. The token
 * comes back this once; only its SHA-256 is kept.
 */
export function makeCollectorToken(
  ctx: Context,
  buildingId: number,
  input: { collector: string },
): { token: string; made: CollectorView } {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const { collector } = parseInput(collectorInput, input);
  const token = randomBytes(32).toString("base64url");
  const { tokenHash: _hash, ...made } = insertCollectorToken(ctx.db, {
    buildingId,
    collector,
    tokenHash: tokenHashOf(token),
    createdAtMs: ctx.now,
    createdBy: actorName(actor),
  });
  return { token, made };
}

export const tokenHashOf = (token: string): string => createHash("sha256").update(token).digest("hex");
