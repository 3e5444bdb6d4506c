import { NextResponse } from "next/server";
import { requestContext } from "@/app/_server/request-context";
import { readBuilding } from "@/lib/services/buildings/find";
import { ServiceError } from "@/lib/services/errors";
import { findKind } from "@/lib/services/kept/kinds";
import { readKeptAll } from "@/lib/services/kept/read-kept";
import { readImportsAtWork } from "@/lib/services/trend-imports/at-work";
import { markOf } from "../standing-note";
import { standingLine } from "../standing-words";

type Params = { params: Promise<{ buildingId: string }> };

/** How the results that a page shows stand now, for the page that follows them: `?of=cost,zone-days/12`. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const ctx = await requestContext();
  try {
    const building = readBuilding(ctx, Number((await params).buildingId));
    const names = (new URL(request.url).searchParams.get("of") ?? "").split(",");
    const wanted = names.flatMap((name) => {
      const [kindName = "", part] = name.split("/");
      const kind = findKind(kindName);
      return kind ? { kind, part } : [];
    });
    const kept = await readKeptAll(ctx, building.id, wanted, 0);
    const line = standingLine(kept, building, readImportsAtWork(ctx, building.id));
    return NextResponse.json({ line, mark: markOf(kept) }, { headers: { "cache-control": "no-store" } });
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    return new Response(error.message, { status: error.code === "unauthenticated" ? 401 : 404 });
  }
}
