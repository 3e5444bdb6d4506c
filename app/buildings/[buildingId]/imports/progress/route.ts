import { NextResponse } from "next/server";
import { requestContext } from "@/app/_server/request-context";
import { ServiceError } from "@/lib/services/errors";
import { readImportsAtWork } from "@/lib/services/trend-imports/at-work";
import { workLines } from "../work-lines";

type Params = { params: Promise<{ buildingId: string }> };

/** How far the files at work are, for the page that follows them. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const ctx = await requestContext();
  try {
    const lines = workLines(readImportsAtWork(ctx, Number((await params).buildingId)), ctx.now);
    return NextResponse.json({ lines }, { headers: { "cache-control": "no-store" } });
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    return new Response(error.message, { status: error.code === "unauthenticated" ? 401 : 404 });
  }
}
