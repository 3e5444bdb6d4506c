import { requestContext } from "@/app/_server/request-context";
import { ServiceError } from "@/lib/services/errors";
import { reportCountsFile } from "@/lib/services/exports/report-counts-file";
import { reportsFile } from "@/lib/services/exports/reports-file";

type Params = { params: Promise<{ buildingId: string }> };

/** All comfort reports of a building as CSV, or with `?counts` their counts by zone, which can be handed on. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  try {
    const file = new URL(request.url).searchParams.has("counts") ? reportCountsFile : reportsFile;
    const { fileName, text } = file(await requestContext(), Number((await params).buildingId));
    return new Response(text, {
      headers: {
        "content-type": "text/csv; charset=utf-8",
        "content-disposition": `attachment; filename="${fileName}"`,
        "cache-control": "private, no-store",
      },
    });
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    return new Response(error.message, { status: error.code === "unauthenticated" ? 401 : 404 });
  }
}
