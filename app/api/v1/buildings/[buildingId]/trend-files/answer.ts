import { awaitRun, runAddress } from "@/app/_server/await-run";
import { pokeImportWorker } from "@/app/_server/stores";
import type { Context } from "@/lib/services/context";
import type { CompletedUpload } from "@/lib/services/uploads/complete";

/** 202 for a file that is here, with its run, the run's state and where its result is read. */
export async function fileAnswer(request: Request, ctx: Context, { run }: CompletedUpload): Promise<Response> {
  pokeImportWorker();
  const result = await awaitRun(request, ctx, run.id);
  const location = runAddress(run.id);
  return Response.json(
    { run: run.id, state: result.state, settled: result.settled, result: location },
    { status: 202, headers: { location } },
  );
}
