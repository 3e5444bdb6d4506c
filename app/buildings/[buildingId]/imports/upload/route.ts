import { NextResponse } from "next/server";
import { awaitImports } from "@/app/_server/await-imports";
import { requestContext } from "@/app/_server/request-context";
import { isFromElsewhere } from "@/app/_server/same-origin";
import { requireFacilities } from "@/lib/services/authorise";
import { ServiceError } from "@/lib/services/errors";
import { type FileOutcome, isFileKind, outcomesNow, takeFile } from "@/lib/services/imports/take-file";
import { outcomeAddress } from "../outcome-address";

type Params = { params: Promise<{ buildingId: string }> };

/** A form is held in memory as a whole [bytes]; with script, trend files come in parts and never pass through here. */
const LARGEST_FORM_BYTES = 201_000_000;
const TOO_LARGE =
  "Without script a form takes files up to 200 MB together. Allow script for this page, bring them in one by one, or use the command line.";

/**
 * Takes the files of the upload form and leads back to the imports page with what became of each. A route, since
 * server actions stop at 1 MB. Only the site's own pages may post here.
 */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  const { buildingId } = await params;
  if (isFromElsewhere(request)) return new Response("This form belongs to another site.", { status: 403 });
  const ctx = await requestContext();
  try {
    requireFacilities(ctx);
    if (Number(request.headers.get("content-length") ?? Number.POSITIVE_INFINITY) > LARGEST_FORM_BYTES)
      throw new ServiceError("invalid", TOO_LARGE);
    const form = await request.formData();
    const kind = String(form.get("kind"));
    if (!isFileKind(kind)) throw new ServiceError("invalid", "Say what the files hold.");
    const files = form.getAll("files").filter((each): each is File => each instanceof File && each.name !== "");
    const outcomes: FileOutcome[] = [];
    for (const file of files) {
      const bytes = new Uint8Array(await file.arrayBuffer());
      outcomes.push(await takeFile(ctx, Number(buildingId), kind, { name: file.name, bytes }));
    }
    const received = outcomes.flatMap(({ state, runId }) => (state === "received" && runId !== null ? [runId] : []));
    await awaitImports(ctx, Number(buildingId), received);
    const settled = outcomesNow(ctx, Number(buildingId), outcomes);
    return back(buildingId, settled.length > 0 ? settled : [noFile()]);
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    if (error.code === "unauthenticated") return seeOther(`/sign-in?next=/buildings/${buildingId}/imports`);
    if (error.code === "not-found") return new Response(error.message, { status: 404 });
    return back(buildingId, [{ fileName: "", state: "refused", message: error.message, runId: null }]);
  }
}

const noFile = (): FileOutcome => ({
  fileName: "",
  state: "refused",
  message: "No file was chosen: choose one or more and send the form again.",
  runId: null,
});

function back(buildingId: string, outcomes: readonly FileOutcome[]): Response {
  return seeOther(outcomeAddress(Number(buildingId), outcomes));
}

function seeOther(location: string): Response {
  return new NextResponse(null, { status: 303, headers: { location } });
}
