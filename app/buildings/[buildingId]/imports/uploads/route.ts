import { createUpload } from "@/app/_server/resumable-upload";
import { listUnfinishedUploads } from "@/lib/services/uploads/find";
import { withUploadPlace } from "./upload-place";

type Params = { params: Promise<{ buildingId: string }> };

/** Uploads that were begun and are not whole, for the form to go on with. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  return withUploadPlace(request, (await params).buildingId, async ({ ctx, buildingId }) =>
    Response.json(listUnfinishedUploads(ctx, buildingId), { headers: { "cache-control": "no-store" } }),
  );
}

/** Begins an upload in parts. */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  return withUploadPlace(request, (await params).buildingId, (place) => createUpload(request, place));
}
