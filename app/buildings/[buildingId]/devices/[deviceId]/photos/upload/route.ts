import { NextResponse } from "next/server";
import { passOver } from "@/app/_server/pass-over";
import { requestContext } from "@/app/_server/request-context";
import { isFromElsewhere } from "@/app/_server/same-origin";
import { requireFacilities } from "@/lib/services/authorise";
import { ServiceError } from "@/lib/services/errors";
import { keepDevicePhoto } from "@/lib/services/photos/keep";
import { LARGEST_PHOTO_BYTES, TOO_LARGE } from "@/lib/services/photos/re-encode";

type Params = { params: Promise<{ buildingId: string; deviceId: string }> };

/** The form's own fields beside the photo [bytes]. */
const FIELDS_BYTES = 10_000;

/** Takes a photo from its form and leads back to the photos. Only the site's own pages may post here. */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  const { buildingId, deviceId } = await params;
  if (isFromElsewhere(request)) return new Response("This form belongs to another site.", { status: 403 });
  const page = `/buildings/${Number(buildingId)}/devices/${Number(deviceId)}/photos`;
  try {
    const ctx = await requestContext();
    requireFacilities(ctx);
    if (
      Number(request.headers.get("content-length") ?? Number.POSITIVE_INFINITY) >
      LARGEST_PHOTO_BYTES + FIELDS_BYTES
    ) {
      await passOver(request);
      throw new ServiceError("too-large", TOO_LARGE);
    }
    const form = await request.formData();
    const file = form.get("photo");
    if (!(file instanceof File) || file.name === "")
      throw new ServiceError("invalid", "No photo was chosen: choose one and send the form again.");
    const item = Number(form.get("inspectionItemId") ?? "");
    await keepDevicePhoto(ctx, Number(buildingId), Number(deviceId), {
      bytes: new Uint8Array(await file.arrayBuffer()),
      caption: String(form.get("caption") ?? ""),
      inspectionItemId: item > 0 ? item : null,
    });
    return seeOther(page);
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    if (error.code === "unauthenticated") return seeOther(`/sign-in?next=${page}`);
    if (error.code === "not-found") return new Response(error.message, { status: 404 });
    return seeOther(`${page}?${new URLSearchParams({ problem: error.message })}`);
  }
}

const seeOther = (location: string): Response => new NextResponse(null, { status: 303, headers: { location } });
