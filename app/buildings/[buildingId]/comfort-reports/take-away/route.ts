import { requestContext } from "@/app/_server/request-context";
import { ServiceError } from "@/lib/services/errors";
import { reportsFile } from "@/lib/services/exports/reports-file";

type Params = { params: Promise<{ buildingId: string }> };

/** All comfort reports of a building as CSV. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  try {
    const { fileName, text } = reportsFile(await requestContext(), Number((await params).buildingId));
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
