import { continueUpload, discardUpload, uploadOffset } from "@/app/_server/resumable-upload";
import { withUploadPlace } from "../upload-place";

type Params = { params: Promise<{ buildingId: string; uploadId: string }> };

export async function HEAD(request: Request, { params }: Params): Promise<Response> {
  const { buildingId, uploadId } = await params;
  return withUploadPlace(request, buildingId, (place) => uploadOffset(place, uploadId));
}

export async function PATCH(request: Request, { params }: Params): Promise<Response> {
  const { buildingId, uploadId } = await params;
  return withUploadPlace(request, buildingId, (place) => continueUpload(request, place, uploadId));
}

export async function DELETE(request: Request, { params }: Params): Promise<Response> {
  const { buildingId, uploadId } = await params;
  return withUploadPlace(request, buildingId, (place) => discardUpload(place, uploadId));
}
