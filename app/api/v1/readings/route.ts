import { runAddress } from "@/app/_server/await-run";
import { asCollector } from "@/app/_server/collector";
import { readJson } from "@/app/_server/read-json";
import { requireCollector } from "@/lib/services/collectors/run-result";
import type { ReadingsInput } from "@/lib/services/readings/readings-input";
import { takeReadings } from "@/lib/services/readings/take";

/** 5,000 readings with long names and statuses stay below [bytes]. */
const MOST_BYTES = 2_000_000;

/** Readings of points that are mapped in the token's building. */
export async function POST(request: Request): Promise<Response> {
  return asCollector(request, async (ctx) => {
    const { buildingId } = requireCollector(ctx);
    const { runId, ...taken } = await takeReadings(
      ctx,
      buildingId,
      (await readJson(request, MOST_BYTES)) as ReadingsInput,
    );
    return Response.json({ run: runId, ...taken, result: runAddress(runId) }, { status: 202 });
  });
}
