import { asCollector } from "@/app/_server/collector";
import { createUpload } from "@/app/_server/resumable-upload";
import { fileNameOf, readUploadHeaders } from "@/app/_server/upload-headers";
import { receiveWholeFile } from "@/lib/services/uploads/receive-whole";
import { fileAnswer } from "./answer";

type Params = { params: Promise<{ buildingId: string }> };

/**
 * Takes one trend file as the body of the request, streamed to the disk. With Upload-Complete it may come in parts,
 * which a file that takes more than five minutes has to: the server ends longer requests.
 */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  const buildingId = Number((await params).buildingId);
  return asCollector(request, async (ctx) => {
    const { complete, contentLength, contentSha256, fileSha256 } = readUploadHeaders(request.headers);
    if (complete === false)
      return createUpload(request, {
        ctx,
        buildingId,
        location: (uploadId) => `/api/v1/buildings/${buildingId}/trend-files/${uploadId}`,
        answer: (done) => fileAnswer(request, ctx, done),
      });
    const done = await receiveWholeFile(ctx, buildingId, {
      fileName: fileNameOf(request),
      bytes: (request.body ?? []) as AsyncIterable<Uint8Array>,
      byteCount: contentLength,
      sha256: fileSha256 ?? contentSha256 ?? null,
    });
    return fileAnswer(request, ctx, done);
  });
}
