import { NextResponse } from "next/server";
import { requestContext } from "@/app/_server/request-context";
import { isFromElsewhere } from "@/app/_server/same-origin";
import { ServiceError } from "@/lib/services/errors";
import { takeWalkEntries } from "@/lib/services/walks/take-entries";

type Params = { params: Promise<{ buildingId: string }> };

/** Fifty entries with a dozen readings each are 100 kB [bytes]. */
const LARGEST_BODY_BYTES = 1_000_000;

/** Takes entries of a walk as a phone sends them, and says of each what became of it. */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  if (isFromElsewhere(request)) return answer(403, { message: "This request comes from another site." });
  const { buildingId } = await params;
  try {
    const ctx = await requestContext();
    const text = await request.text();
    if (text.length > LARGEST_BODY_BYTES) return answer(413, { message: "Send fewer entries at a time." });
    const entries = entriesOf(text);
    if (!entries) return answer(400, { message: "A list of entries is expected." });
    return answer(200, { outcomes: takeWalkEntries(ctx, Number(buildingId), entries) });
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    const status = { unauthenticated: 401, "not-found": 404, "too-large": 413 }[error.code as "not-found"] ?? 400;
    return answer(status, { message: error.message });
  }
}

function entriesOf(text: string): unknown[] | null {
  try {
    const { entries } = JSON.parse(text);
    return Array.isArray(entries) ? entries : null;
  } catch {
    return null;
  }
}

const answer = (status: number, body: object): Response =>
  NextResponse.json(body, { status, headers: { "cache-control": "no-store" } });
