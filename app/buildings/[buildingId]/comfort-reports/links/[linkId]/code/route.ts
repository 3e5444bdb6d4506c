import { renderSVG } from "uqr";
import { requestContext } from "@/app/_server/request-context";
import { readComfortLinks } from "@/lib/services/comfort-links/manage";
import { ServiceError } from "@/lib/services/errors";
import { siteOrigin } from "../../origin";

type Params = { params: Promise<{ buildingId: string; linkId: string }> };

/** The QR code of a link as a picture of its own: a page with hundreds of links stays small. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  const { buildingId, linkId } = await params;
  try {
    const links = readComfortLinks(await requestContext(), Number(buildingId));
    const link = links.find((each) => each.id === Number(linkId));
    if (!link) return new Response("There is no such link.", { status: 404 });
    return new Response(renderSVG(`${await siteOrigin()}/report/${link.token}`), {
      headers: { "content-type": "image/svg+xml", "cache-control": "private, no-store" },
    });
  } catch (error) {
    if (error instanceof ServiceError) return new Response(error.message, { status: 401 });
    throw error;
  }
}
