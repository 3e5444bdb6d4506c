import sharp from "sharp";
import { ServiceError } from "../errors";

/** Largest file that is taken [bytes]: a photo of 12 megapixels is 3 to 8 MB. */
export const LARGEST_PHOTO_BYTES = 25_000_000;
/** Most pixels that are unpacked: 100 megapixels are 300 MB of memory. */
const MOST_PIXELS = 100_000_000;
/** Longest side of a kept photo: small print of a nameplate is legible at it [px]. */
const LONGEST_SIDE_PX = 2000;
/** A kept photo is smaller than this; a finer one is encoded again at less quality [bytes]. */
export const KEPT_PHOTO_BYTES = 1_000_000;
const QUALITIES = [82, 70, 55, 40];
const FORMATS = new Set(["jpeg", "png", "webp", "avif", "heif", "tiff", "gif"]);

export type KeptPhoto = { bytes: Uint8Array; widthPx: number; heightPx: number };

/**
 * A photo as it is kept: turned upright, at most 2,000 px a side, as JPEG without the metadata of the camera (place, time,
 * make and owner). Refused in plain words when it is no picture or too large.
 */
export async function reEncodePhoto(bytes: Uint8Array): Promise<KeptPhoto> {
  if (bytes.byteLength === 0) refuse("The file is empty: take the photo again.");
  if (bytes.byteLength > LARGEST_PHOTO_BYTES) refuse(TOO_LARGE);
  if (isHeic(bytes)) refuse(HEIC);
  try {
    const source = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: "error" });
    const { format } = await source.metadata();
    if (!FORMATS.has(format ?? "")) refuse(NO_PHOTO);
    const upright = source
      .rotate()
      .resize({ width: LONGEST_SIDE_PX, height: LONGEST_SIDE_PX, fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#ffffff" });
    for (const quality of QUALITIES) {
      const { data, info } = await upright
        .clone()
        .jpeg({ quality, mozjpeg: true })
        .toBuffer({ resolveWithObject: true });
      if (data.byteLength <= KEPT_PHOTO_BYTES) return { bytes: data, widthPx: info.width, heightPx: info.height };
    }
    return refuse("The photo cannot be made small enough: take it again with less in it.");
  } catch (error) {
    if (error instanceof ServiceError) throw error;
    return refuse(/pixel limit/i.test(String(error)) ? TOO_MANY_PIXELS : NO_PHOTO);
  }
}

export const TOO_LARGE =
  "The file is over 25 MB, more than a photo of a phone has. Choose the photo itself, or make it smaller first.";
const TOO_MANY_PIXELS = "The picture has more than 100 million pixels: make it smaller first.";
const NO_PHOTO = "This is no photo that can be read. Choose a JPEG, PNG or WebP picture.";
const HEIC =
  "This photo is in the HEIC format, which cannot be read here. Set the camera to JPEG, or send the photo to yourself as JPEG.";

function refuse(message: string): never {
  throw new ServiceError("invalid", message, { photo: message });
}

/** `ftypheic` and its kin after the length of the first box. */
function isHeic(bytes: Uint8Array): boolean {
  const brand = new TextDecoder("latin1").decode(bytes.subarray(4, 12));
  return /^ftyp(heic|heix|hevc|heim|heis|mif1)/.test(brand);
}
