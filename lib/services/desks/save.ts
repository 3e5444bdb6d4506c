import { z } from "zod";
import { findDeskByCode, findZoneByCode, insertDesk } from "@/db/queries/zones";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

const deskInput = z.object({
  code: z
    .string()
    .trim()
    .min(1, "Give the desk a code, for example 2-14-03.")
    .max(40, "Keep the code under 40 characters."),
  zoneCode: z.string().trim().min(1, "Say which zone the desk stands in."),
  note: z.string().trim().max(200, "Keep the note under 200 characters.").default(""),
});

export type DeskInput = z.input<typeof deskInput>;

/** Adds a desk to a zone. Returns its id. */
export function addDesk(ctx: Context, buildingId: number, input: DeskInput): number {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const { code, zoneCode, note } = parseInput(deskInput, input);
  const zone = findZoneByCode(ctx.db, buildingId, zoneCode);
  if (!zone) {
    const message = `There is no zone ${zoneCode} in this building: add it first, or correct the code.`;
    throw new ServiceError("invalid", message, { zoneCode: message });
  }
  if (findDeskByCode(ctx.db, buildingId, code)) {
    const message = `Desk ${code} is already there.`;
    throw new ServiceError("conflict", message, { code: message });
  }
  return insertDesk(ctx.db, { buildingId, zoneId: zone.id, code, note }).id;
}
