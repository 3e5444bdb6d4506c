import { requestContext } from "@/app/_server/request-context";
import { printFontFaces } from "@/lib/services/business-case/print-fonts";
import { readBusinessCase } from "@/lib/services/business-case/read";
import { askedIssue } from "../asked-issue";
import { casePage } from "../markup/case-page";
import { refusalResponse } from "../refusal";

type Params = { params: Promise<{ buildingId: string; proposalId: string }> };

/** The document itself, with nothing beside it: what is printed is what is there. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const { buildingId, proposalId } = await params;
  try {
    const ctx = await requestContext();
    const { issue, paper } = askedIssue(Object.fromEntries(new URL(request.url).searchParams));
    const { document } = readBusinessCase(ctx, Number(buildingId), Number(proposalId), issue);
    const backHref = `/buildings/${Number(buildingId)}/proposals/${Number(proposalId)}/case`;
    return new Response(casePage(document, { paper, fontFaces: printFontFaces(), backHref }), {
      headers: { "content-type": "text/html; charset=utf-8", "cache-control": "private, no-store" },
    });
  } catch (error) {
    return refusalResponse(error);
  }
}
