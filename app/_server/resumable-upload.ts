import { ServiceError } from "@/lib/services/errors";
import { abandonUpload } from "@/lib/services/uploads/abandon";
import { appendPart } from "@/lib/services/uploads/append";
import { beginUpload } from "@/lib/services/uploads/begin";
import { type CompletedUpload, completeUpload } from "@/lib/services/uploads/complete";
import { readUpload } from "@/lib/services/uploads/find";
import { LARGEST_PART_BYTES, type UploadContext } from "@/lib/services/uploads/upload-context";
import type { UploadView } from "@/lib/services/uploads/upload-view";
import { fileNameOf, readUploadHeaders } from "./upload-headers";

/*
 * Uploads in parts over HTTP, in the shape of the IETF's "Resumable Uploads for HTTP" (draft-ietf-httpbis-resumable-upload,
 * the working group's text of 2026; revision 12 is dated July 2026). POST with Upload-Complete begins, HEAD tells the
 * offset, PATCH with Upload-Offset appends, DELETE discards. Left out: interim responses (104), which the framework cannot
 * send, uploads of unknown length, and OPTIONS. Beyond it: the file's name may stand in `?name=`.
 */

/** Where an upload's parts go, and what is answered for a whole file. */
export type UploadPlace = {
  ctx: UploadContext;
  buildingId: number;
  location: (uploadId: string) => string;
  answer: (done: CompletedUpload) => Response | Promise<Response>;
};

/** POST: begins an upload, with its first part or all of it when there is content. */
export async function createUpload(request: Request, place: UploadPlace): Promise<Response> {
  const { ctx, buildingId } = place;
  const { complete, length, contentLength, contentSha256, fileSha256 } = readUploadHeaders(request.headers);
  if (complete === null)
    throw new ServiceError("invalid", "Send Upload-Complete: ?1 with all of the file, or ?0 for a first part.");
  const totalBytes = length ?? (complete ? contentLength : null);
  if (totalBytes === null) throw new ServiceError("invalid", "Say how many bytes the file has in Upload-Length.");
  if (length !== null && complete && contentLength !== null && contentLength !== length)
    throw new ServiceError(
      "invalid",
      `Upload-Length says ${length} bytes and Content-Length ${contentLength}: they must agree.`,
    );
  const modified = Number(new URL(request.url).searchParams.get("modified") ?? Number.NaN);
  const upload = await beginUpload(ctx, buildingId, {
    fileName: fileNameOf(request),
    totalBytes,
    lastModifiedMs: Number.isSafeInteger(modified) ? modified : null,
    declaredSha256: fileSha256 ?? null,
  });
  const part = { offset: 0, bytes: bytesOf(request), byteCount: contentLength, sha256: contentSha256 };
  const view = contentLength === 0 || !request.body ? upload : await appendOrForget(ctx, upload, part);
  if (complete) return finish(place, upload.id);
  return new Response(null, {
    status: 201,
    headers: { ...offsetHeaders(view), location: place.location(upload.id), "upload-limit": limitsOf(view, ctx) },
  });
}

/** HEAD: how far an upload is. */
export async function uploadOffset(place: UploadPlace, uploadId: string): Promise<Response> {
  const view = await readUpload(place.ctx, place.buildingId, uploadId);
  if (view.state === "abandoned" || view.state === "expired")
    throw new ServiceError("gone", `${view.fileName} was discarded. Send it again.`);
  return new Response(null, {
    status: 204,
    headers: {
      ...offsetHeaders(view),
      "upload-length": String(view.totalBytes),
      "upload-limit": limitsOf(view, place.ctx),
      "cache-control": "no-store",
    },
  });
}

/** PATCH: one part more; with Upload-Complete: ?1 the last. */
export async function continueUpload(request: Request, place: UploadPlace, uploadId: string): Promise<Response> {
  const { ctx, buildingId } = place;
  const { offset, complete, contentLength, contentSha256 } = readUploadHeaders(request.headers);
  if (request.headers.get("content-type") !== "application/partial-upload")
    throw new ServiceError("invalid", "Send a part with Content-Type: application/partial-upload.");
  if (offset === null || complete === null)
    throw new ServiceError(
      "invalid",
      "Say where the part begins in Upload-Offset, and whether it is the last in Upload-Complete.",
    );
  const before = await readUpload(ctx, buildingId, uploadId);
  const askedAgain = complete && before.receivedBytes === before.totalBytes;
  if (!askedAgain || offset !== before.totalBytes) {
    const part = { offset, bytes: bytesOf(request), byteCount: contentLength, sha256: contentSha256 };
    const view = await appendPart(ctx, buildingId, uploadId, part);
    if (!complete) return new Response(null, { status: 204, headers: offsetHeaders(view) });
  }
  return finish(place, uploadId);
}

/** DELETE: discards an upload with what came of it. */
export async function discardUpload(place: UploadPlace, uploadId: string): Promise<Response> {
  await abandonUpload(place.ctx, place.buildingId, uploadId);
  return new Response(null, { status: 204 });
}

async function finish({ ctx, buildingId, answer }: UploadPlace, uploadId: string): Promise<Response> {
  const response = await answer(await completeUpload(ctx, buildingId, uploadId));
  response.headers.set("upload-complete", "?1");
  return response;
}

/** A first part that is refused leaves no upload behind: its sender never learnt the address. */
async function appendOrForget(
  ctx: UploadContext,
  upload: UploadView,
  part: Parameters<typeof appendPart>[3],
): Promise<UploadView> {
  try {
    const view = await appendPart(ctx, upload.buildingId, upload.id, part);
    if (part.byteCount !== null && view.receivedBytes < part.byteCount)
      throw new ServiceError("precondition", "The line dropped before all had come. Send the file again.");
    return view;
  } catch (error) {
    await abandonUpload(ctx, upload.buildingId, upload.id);
    throw error;
  }
}

async function* bytesOf(request: Request): AsyncGenerator<Uint8Array> {
  if (request.body) yield* request.body as unknown as AsyncIterable<Uint8Array>;
}

function offsetHeaders({ receivedBytes, state }: UploadView): Record<string, string> {
  return { "upload-offset": String(receivedBytes), "upload-complete": state === "complete" ? "?1" : "?0" };
}

function limitsOf({ expiresAtMs }: UploadView, { limits, now }: UploadContext): string {
  const seconds = Math.max(0, Math.floor((expiresAtMs - now) / 1000));
  return `max-size=${limits.largestFileBytes}, max-append-size=${LARGEST_PART_BYTES}, max-age=${seconds}`;
}
