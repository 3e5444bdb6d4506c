import { problem, problemOf } from "@/app/_server/problem";
import { requestContext } from "@/app/_server/request-context";
import type { UploadPlace } from "@/app/_server/resumable-upload";
import { isFromElsewhere } from "@/app/_server/same-origin";
import { pokeImportWorker } from "@/app/_server/stores";
import { uploadContext } from "@/app/_server/upload-context";
import { uploadOutcome } from "@/lib/services/uploads/outcome";

/** Does the work of an upload's request for the signed-in user; refusals become problem documents. */
export async function withUploadPlace(
  request: Request,
  buildingId: string,
  work: (place: UploadPlace) => Promise<Response>,
): Promise<Response> {
  if (isFromElsewhere(request))
    return problem(request, 403, "This address takes files from this site's own pages only.");
  try {
    return await work({
      ctx: uploadContext(await requestContext()),
      buildingId: Number(buildingId),
      location: (uploadId) => `/buildings/${Number(buildingId)}/imports/uploads/${uploadId}`,
      answer: (done) => {
        pokeImportWorker();
        return Response.json(uploadOutcome(done));
      },
    });
  } catch (error) {
    return problemOf(request, error);
  }
}
