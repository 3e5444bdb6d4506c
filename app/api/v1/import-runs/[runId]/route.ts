import { awaitRun } from "@/app/_server/await-run";
import { asCollector } from "@/app/_server/collector";

type Params = { params: Promise<{ runId: string }> };

/** The result of an import, for the token of its building. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const runId = Number((await params).runId);
  return asCollector(request, async (ctx) =>
    Response.json(await awaitRun(request, ctx, runId), { headers: { "cache-control": "no-store" } }),
  );
}
