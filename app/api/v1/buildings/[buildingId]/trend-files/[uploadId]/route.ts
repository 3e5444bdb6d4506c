import { asCollector } from "@/app/_server/collector";
import { continueUpload, discardUpload, type UploadPlace, uploadOffset } from "@/app/_server/resumable-upload";
import { fileAnswer } from "../answer";

type Params = { params: Promise<{ buildingId: string; uploadId: string }> };

export const HEAD = (request: Request, { params }: Params): Promise<Response> => at(request, params, uploadOffset);

export const PATCH = (request: Request, { params }: Params): Promise<Response> =>
  at(request, params, (place, uploadId) => continueUpload(request, place, uploadId));

export const DELETE = (request: Request, { params }: Params): Promise<Response> => at(request, params, discardUpload);

async function at(
  request: Request,
  params: Params["params"],
  work: (place: UploadPlace, uploadId: string) => Promise<Response>,
): Promise<Response> {
  const { buildingId: id, uploadId } = await params;
  const buildingId = Number(id);
  return asCollector(request, (ctx) =>
    work(
      {
        ctx,
        buildingId,
        location: (upload) => `/api/v1/buildings/${buildingId}/trend-files/${upload}`,
        answer: (done) => fileAnswer(request, ctx, done),
      },
      uploadId,
    ),
  );
}
