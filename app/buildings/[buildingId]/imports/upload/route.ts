import { NextResponse } from "next/server";
import { awaitImports } from "@/app/_server/await-imports";
import { requestContext } from "@/app/_server/request-context";
import { requireFacilities } from "@/lib/services/authorise";
import { ServiceError } from "@/lib/services/errors";
import { type FileOutcome, isFileKind, outcomesNow, takeFile } from "@/lib/services/imports/take-file";

type Params = { params: Promise<{ buildingId: string }> };

/**
 * Takes the files of the upload form and leads back to the imports page with what became of each. A route, since
 * server actions stop at 1 MB. Only the site's own pages may post here.
 */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  const { buildingId } = await params;
  const origin = request.headers.get("origin");
  if (origin !== null && new URL(origin).host !== request.headers.get("host"))
    return new Response("This form belongs to another site.", { status: 403 });
  const ctx = await requestContext();
  try {
    requireFacilities(ctx);
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

/**
 * Outcomes travel in the address: few, short, and the page can be loaded again. Refusals come first, then one file for
 * each thing that was said of the others; the history has all of it.
 */
function back(buildingId: string, outcomes: readonly FileOutcome[]): Response {
  const isBad = ({ state }: FileOutcome) => state === "refused" || state === "failed";
  const refused = outcomes.filter(isBad);
  const taken = new Map(outcomes.flatMap((each) => (isBad(each) ? [] : [[each.message, each] as const])));
  const shown = [...refused.slice(0, 12), ...[...taken.values()].slice(0, 12)].map(({ fileName, state, message }) => [
    state,
    fileName,
    message.slice(0, 300),
  ]);
  const counts = { all: outcomes.length, refused: refused.length };
  const query = new URLSearchParams({ outcome: JSON.stringify({ shown, counts }) });
  return seeOther(`/buildings/${buildingId}/imports?${query}`);
}

function seeOther(location: string): Response {
  return new NextResponse(null, { status: 303, headers: { location } });
}
