import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { insertInspection } from "@/db/queries/inspections";
import { registerDevice } from "@/lib/services/devices/register";
import { keepDevicePhoto, readDevicePhotos, readPhotoBytes, removeDevicePhoto } from "@/lib/services/photos/keep";
import { KEPT_PHOTO_BYTES } from "@/lib/services/photos/re-encode";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

/** A picture of noise, the worst there is for a JPEG, with the metadata of a phone: place, make and time. */
async function phonePhoto(width: number, height: number, orientation = 1): Promise<Buffer> {
  return sharp({
    create: { width, height, channels: 3, background: "#808080", noise: { type: "gaussian", mean: 128, sigma: 30 } },
  })
    .jpeg({ quality: 90 })
    .withMetadata({ orientation })
    .withExifMerge({
      IFD0: { Make: "Invented Camera", Artist: "Nobody" },
      IFD3: { GPSLatitudeRef: "N", GPSLatitude: "41/1 52/1 0/1", GPSLongitudeRef: "W", GPSLongitude: "87/1 37/1 0/1" },
    })
    .toBuffer();
}

function office() {
  const { ctx, buildingId } = smallOffice();
  const deviceId = registerDevice(ctx, buildingId, heaterInput());
  const keep = (bytes: Uint8Array, more: { caption?: string; inspectionItemId?: number } = {}) =>
    keepDevicePhoto(ctx, buildingId, deviceId, { bytes, ...more });
  return { ctx, buildingId, deviceId, keep };
}

describe("photos of devices", () => {
  it("keeps a photo of 12 megapixels below the limit, upright and without metadata", async () => {
    const { ctx, buildingId, deviceId, keep } = office();
    const bytes = await phonePhoto(4000, 3000, 6);
    expect((await sharp(bytes).metadata()).exif?.includes("Invented Camera")).toBe(true);
    const id = await keep(bytes, { caption: "Label" });
    const kept = readPhotoBytes(ctx, buildingId, deviceId, id);
    expect(kept.byteLength).toBeLessThanOrEqual(KEPT_PHOTO_BYTES);
    const metadata = await sharp(kept).metadata();
    expect(metadata).toMatchObject({ format: "jpeg", width: 1500, height: 2000 });
    expect([metadata.exif, metadata.icc, metadata.iptc, metadata.xmp, metadata.orientation]).toEqual(
      Array.from({ length: 5 }, () => undefined),
    );
    expect(Buffer.from(kept).includes("Invented Camera")).toBe(false);
    expect(Buffer.from(kept).includes("Exif")).toBe(false);
    expect(readDevicePhotos(ctx, buildingId, deviceId).photos[0]).toMatchObject({
      widthPx: 1500,
      heightPx: 2000,
      caption: "Label",
    });
  });

  it("makes no photo larger, and takes PNG and WebP as well", async () => {
    const { ctx, buildingId, deviceId, keep } = office();
    const picture = sharp({ create: { width: 300, height: 200, channels: 4, background: "#00634a80" } });
    for (const bytes of [await picture.clone().png().toBuffer(), await picture.clone().webp().toBuffer()]) {
      const metadata = await sharp(readPhotoBytes(ctx, buildingId, deviceId, await keep(bytes))).metadata();
      expect(metadata).toMatchObject({ format: "jpeg", width: 300, height: 200 });
    }
  });

  it("refuses in plain words what is no photo, too large, empty, cut off or HEIC", async () => {
    const { ctx, buildingId, deviceId, keep } = office();
    const messageOf = async (bytes: Uint8Array) => (await refusalOf(() => keep(bytes))).message;
    expect(await messageOf(Buffer.from("desk,watts\n2-14,1500\n"))).toContain("no photo");
    expect(await messageOf(Buffer.from("<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>"))).toContain(
      "no photo",
    );
    expect(await messageOf(new Uint8Array(200_000_000))).toContain("over 25 MB");
    expect(await messageOf(new Uint8Array(0))).toContain("empty");
    expect(await messageOf((await phonePhoto(400, 300)).subarray(0, 2000))).toContain("no photo");
    expect(await messageOf(Buffer.from("\0\0\0\u0018ftypheic\0\0\0\0", "latin1"))).toContain("HEIC");
    expect(readDevicePhotos(ctx, buildingId, deviceId).photos).toEqual([]);
  });

  it("belongs to a finding of the device's own inspections only", async () => {
    const { ctx, buildingId, deviceId, keep } = office();
    const inspection = insertInspection(
      ctx.db,
      { deviceId, inspectedOn: "2025-06-20", checklist: "us-ifc-2018", enteredBy: "Robin", enteredAtMs: ctx.now },
      [{ itemId: "damaged", severity: "take-out-of-use", outcome: "fail" }],
    );
    const { findings } = readDevicePhotos(ctx, buildingId, deviceId);
    expect(findings).toEqual([
      { id: expect.any(Number), inspectedOn: inspection.inspectedOn, fault: expect.stringContaining("Cord, plug") },
    ]);
    const bytes = await phonePhoto(200, 100);
    await keep(bytes, { inspectionItemId: findings[0]?.id });
    expect((await refusalOf(() => keep(bytes, { inspectionItemId: 999 }))).code).toBe("invalid");
  });

  it("takes a photo out with its file, unless another photo is the same picture", async () => {
    const { ctx, buildingId, deviceId, keep } = office();
    const bytes = await phonePhoto(200, 100);
    const [first, second] = [await keep(bytes), await keep(bytes)];
    removeDevicePhoto(ctx, buildingId, deviceId, first);
    expect(readPhotoBytes(ctx, buildingId, deviceId, second).byteLength).toBeGreaterThan(0);
    removeDevicePhoto(ctx, buildingId, deviceId, second);
    expect((await refusalOf(() => readPhotoBytes(ctx, buildingId, deviceId, second))).code).toBe("not-found");
  });
});
