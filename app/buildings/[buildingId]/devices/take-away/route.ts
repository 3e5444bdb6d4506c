import { requestContext } from "@/app/_server/request-context";
import { ServiceError } from "@/lib/services/errors";
import { registerCsv, registerWorkbook } from "@/lib/services/exports/register-files";

type Params = { params: Promise<{ buildingId: string }> };

/** The register to take away: a workbook, or one table as CSV with `?table=settings`. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const id = Number((await params).buildingId);
  const table = new URL(request.url).searchParams.get("table");
  try {
    const ctx = await requestContext();
    if (table !== null) {
      const { fileName, text } = registerCsv(ctx, id, table);
      return file(fileName, "text/csv; charset=utf-8", text);
    }
    const { fileName, bytes } = await registerWorkbook(ctx, id);
    return file(fileName, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", Uint8Array.from(bytes));
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    return new Response(error.message, { status: error.code === "unauthenticated" ? 401 : 404 });
  }
}

const file = (name: string, type: string, body: string | Uint8Array<ArrayBuffer>): Response =>
  new Response(body, {
    headers: {
      "content-type": type,
      "content-disposition": `attachment; filename="${name}"`,
      "cache-control": "private, no-store",
    },
  });
