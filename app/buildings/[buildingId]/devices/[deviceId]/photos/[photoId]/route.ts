import { requestContext } from "@/app/_server/request-context";
import { ServiceError } from "@/lib/services/errors";
import { readPhotoBytes } from "@/lib/services/photos/keep";

type Params = { params: Promise<{ buildingId: string; deviceId: string; photoId: string }> };

/** The picture itself, for whoever is signed in. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  const { buildingId, deviceId, photoId } = await params;
  try {
    const bytes = readPhotoBytes(await requestContext(), Number(buildingId), Number(deviceId), Number(photoId));
    return new Response(Uint8Array.from(bytes), {
      headers: {
        "content-type": "image/jpeg",
        "cache-control": "private, max-age=86400",
        "x-content-type-options": "nosniff",
      },
    });
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    return new Response(error.message, { status: error.code === "unauthenticated" ? 401 : 404 });
  }
}
