import {
  countPhotosOf,
  type DevicePhotoRow,
  deleteDevicePhoto,
  findDevicePhoto,
  insertDevicePhoto,
  listDevicePhotos,
} from "@/db/queries/device-photos";
import { listInspections } from "@/db/queries/inspections";
import { CHECKLIST_ITEMS } from "@/lib/electrical/inspection/checklist-items";
import type { ChecklistId } from "@/lib/electrical/inspection/checklists";
import { actorName, requireFacilities } from "../authorise";
import type { Context } from "../context";
import { readDevice } from "../devices/read";
import { ServiceError } from "../errors";
import { reEncodePhoto } from "./re-encode";

/** Photos that a device may have: more hide what they should show. */
const MOST_PHOTOS = 30;

/** Keeps a photo of a device, or of a finding of one of its inspections. Returns its id. */
export async function keepDevicePhoto(
  ctx: Context,
  buildingId: number,
  deviceId: number,
  photo: { bytes: Uint8Array; caption?: string; inspectionItemId?: number | null },
): Promise<number> {
  const actor = requireFacilities(ctx);
  readDevice(ctx, buildingId, deviceId);
  const caption = (photo.caption ?? "").trim();
  if (caption.length > 200)
    throw new ServiceError("invalid", "Keep the caption under 200 characters.", { caption: "Under 200 characters." });
  const inspectionItemId = photo.inspectionItemId ?? null;
  if (inspectionItemId !== null && !isItemOf(ctx, deviceId, inspectionItemId))
    throw new ServiceError("invalid", "This finding is not one of the device's.", {
      inspectionItemId: "Choose again.",
    });
  if (listDevicePhotos(ctx.db, deviceId).length >= MOST_PHOTOS)
    throw new ServiceError("conflict", `A device has at most ${MOST_PHOTOS} photos: take one out first.`);
  const { bytes, widthPx, heightPx } = await reEncodePhoto(photo.bytes);
  const { sha256, byteCount } = await ctx.uploads.saveFrom([bytes]);
  return insertDevicePhoto(ctx.db, {
    buildingId,
    deviceId,
    inspectionItemId,
    sha256,
    byteCount,
    widthPx,
    heightPx,
    caption,
    enteredAtMs: ctx.now,
    enteredBy: actorName(actor),
  }).id;
}

const isItemOf = (ctx: Context, deviceId: number, itemId: number): boolean =>
  listInspections(ctx.db, deviceId).some((inspection) => inspection.items.some((item) => item.id === itemId));

/** A finding that a photo can belong to. */
export type PhotoFinding = { id: number; inspectedOn: string; fault: string };

export function readDevicePhotos(
  ctx: Context,
  buildingId: number,
  deviceId: number,
): { device: ReturnType<typeof readDevice>; photos: DevicePhotoRow[]; findings: PhotoFinding[] } {
  requireFacilities(ctx);
  const device = readDevice(ctx, buildingId, deviceId);
  const findings = listInspections(ctx.db, deviceId).flatMap(({ inspectedOn, checklist, items }) =>
    items
      .filter((item) => item.outcome === "fail")
      .map(({ id, itemId }) => ({ id, inspectedOn, fault: faultOf(checklist, itemId) })),
  );
  return { device, photos: listDevicePhotos(ctx.db, deviceId), findings };
}

/** What is wrong when an item of a checklist fails, in its words. */
function faultOf(checklist: string, itemId: string): string {
  const item = CHECKLIST_ITEMS.find((each) => each.id === itemId);
  return item?.elsewhere?.[checklist as ChecklistId]?.fault ?? item?.fault ?? itemId;
}

/** The JPEG of a photo. */
export function readPhotoBytes(ctx: Context, buildingId: number, deviceId: number, photoId: number): Uint8Array {
  requireFacilities(ctx);
  readDevice(ctx, buildingId, deviceId);
  const photo = findDevicePhoto(ctx.db, deviceId, photoId);
  const bytes = photo && ctx.uploads.read(photo.sha256);
  if (!bytes) throw new ServiceError("not-found", "This photo does not exist.");
  return bytes;
}

export function removeDevicePhoto(ctx: Context, buildingId: number, deviceId: number, photoId: number): void {
  requireFacilities(ctx);
  readDevice(ctx, buildingId, deviceId);
  const photo = findDevicePhoto(ctx.db, deviceId, photoId);
  if (!photo) throw new ServiceError("not-found", "This photo does not exist.");
  deleteDevicePhoto(ctx.db, photoId);
  if (countPhotosOf(ctx.db, photo.sha256) === 0) ctx.uploads.remove(photo.sha256);
}
