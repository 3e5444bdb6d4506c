import { insertRegisterImport } from "@/db/queries/register-imports";
import { listZones } from "@/db/queries/zones";
import { proposeRegisterMapping } from "@/lib/importers/register/propose-register-mapping";
import { openRegisterFile } from "@/lib/importers/register/register-grid";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** Largest register [bytes]: 20,000 devices are 2 MB. */
export const LARGEST_REGISTER_BYTES = 10_000_000;

/** Takes somebody's own register, keeps it and proposes what its columns are. Nothing is registered yet. Returns its id. */
export async function receiveRegister(
  ctx: Context,
  buildingId: number,
  file: { name: string; bytes: Uint8Array },
): Promise<number> {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  if (file.bytes.byteLength > LARGEST_REGISTER_BYTES)
    throw new ServiceError("too-large", "The file is over 10 MB: take pictures and other sheets out of it.");
  const opened = await openRegisterFile(file);
  if (opened.status === "refused") throw new ServiceError("invalid", opened.message, { file: opened.message });
  const zones = listZones(ctx.db, buildingId);
  const [sheet] = opened.sheets;
  if (!sheet) throw new ServiceError("invalid", "The file holds no sheet.");
  const defaultZoneCode = zones.length === 1 ? (zones[0]?.code ?? "") : "";
  const mapping = proposeRegisterMapping(sheet, { mainsVoltageV: building.mainsVoltageV, defaultZoneCode });
  const { sha256, byteCount } = await ctx.uploads.saveFrom([file.bytes]);
  return insertRegisterImport(ctx.db, {
    buildingId,
    fileName: file.name,
    sha256,
    byteCount,
    mapping,
    receivedAtMs: ctx.now,
    receivedBy: actorName(actor),
  }).id;
}
