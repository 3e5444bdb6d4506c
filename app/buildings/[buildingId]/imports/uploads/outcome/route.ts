import { z } from "zod";
import { awaitImports } from "@/app/_server/await-imports";
import { readJson } from "@/app/_server/read-json";
import { requireFacilities } from "@/lib/services/authorise";
import { ServiceError } from "@/lib/services/errors";
import { type FileOutcome, outcomesNow } from "@/lib/services/imports/take-file";
import { outcomeAddress } from "../../outcome-address";
import { withUploadPlace } from "../upload-place";

type Params = { params: Promise<{ buildingId: string }> };

const outcomes = z
  .array(
    z.object({
      fileName: z.string(),
      state: z.enum(["imported", "unchanged", "received", "waiting", "refused", "failed"]),
      message: z.string(),
      runId: z.number().int().nullable(),
    }),
  )
  .max(5000);

/** Where the form leads when its last file is here: to the page with what became of each, small ones read already. */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  return withUploadPlace(request, (await params).buildingId, async ({ ctx, buildingId }) => {
    requireFacilities(ctx);
    const sent = outcomes.safeParse(await readJson(request, 2_000_000));
    if (!sent.success) throw new ServiceError("invalid", "This is no list of what became of files.");
    const list: FileOutcome[] = sent.data;
    await awaitImports(
      ctx,
      buildingId,
      list.flatMap(({ state, runId }) => (state === "received" && runId !== null ? [runId] : [])),
    );
    return Response.json({ address: outcomeAddress(buildingId, outcomesNow(ctx, buildingId, list)) });
  });
}
