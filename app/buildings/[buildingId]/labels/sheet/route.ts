import { requestContext } from "@/app/_server/request-context";
import { readBuilding } from "@/lib/services/buildings/find";
import { ServiceError } from "@/lib/services/errors";
import { readLabels } from "@/lib/services/labels/read";
import { siteOrigin } from "../../comfort-reports/links/origin";
import { choiceOfQuery } from "../choice";
import { labelPage } from "../label-markup";

type Params = { params: Promise<{ buildingId: string }> };

/** The sheets themselves, with nothing beside them: what is printed is what is there. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const { buildingId } = await params;
  try {
    const ctx = await requestContext();
    const building = readBuilding(ctx, Number(buildingId));
    const { choice, sheet, skip } = choiceOfQuery(Object.fromEntries(new URL(request.url).searchParams));
    const { labels } = readLabels(ctx, building.id, choice);
    const html = labelPage(sheet, labels, { origin: await siteOrigin(), skip, title: `Labels of ${building.name}` });
    return new Response(html, {
      headers: { "content-type": "text/html; charset=utf-8", "cache-control": "private, no-store" },
    });
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    return new Response(error.message, { status: error.code === "unauthenticated" ? 401 : 404 });
  }
}
