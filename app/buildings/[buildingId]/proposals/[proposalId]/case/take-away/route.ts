import { requestContext } from "@/app/_server/request-context";
import { printFontFaces } from "@/lib/services/business-case/print-fonts";
import { printPdf } from "@/lib/services/business-case/print-pdf";
import { type BusinessCase, readBusinessCase } from "@/lib/services/business-case/read";
import { ServiceError } from "@/lib/services/errors";
import { caseCsvFiles, caseWorkbook } from "@/lib/services/exports/case-workbook";
import { askedIssue } from "../asked-issue";
import { casePage } from "../markup/case-page";
import type { Paper } from "../markup/case-style";
import { refusalResponse } from "../refusal";

type Params = { params: Promise<{ buildingId: string; proposalId: string }> };
type File = { name: string; type: string; body: string | Uint8Array<ArrayBuffer> };

/** The case to take away: `?form=pdf`, `?form=xlsx`, or `?form=csv&table=cash-flow`. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const { buildingId, proposalId } = await params;
  const query = Object.fromEntries(new URL(request.url).searchParams);
  try {
    const ctx = await requestContext();
    const { issue, paper } = askedIssue(query);
    const business = readBusinessCase(ctx, Number(buildingId), Number(proposalId), issue);
    const { name, type, body } = await fileOf(business, query, paper);
    return new Response(body, {
      headers: {
        "content-type": type,
        "content-disposition": `attachment; filename="business-case-${business.input.number}${name}"`,
        "cache-control": "private, no-store",
      },
    });
  } catch (error) {
    return refusalResponse(error);
  }
}

async function fileOf({ input, document }: BusinessCase, query: Record<string, string>, paper: Paper): Promise<File> {
  if (query.form === "xlsx")
    return {
      name: ".xlsx",
      type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      body: Uint8Array.from(await caseWorkbook(input)),
    };
  if (query.form === "csv") {
    const found = caseCsvFiles(input).find(({ fileName }) => fileName === `${query.table}.csv`);
    if (!found) throw new ServiceError("not-found", `The case has no table ${query.table ?? ""}.`);
    return { name: `-${found.fileName}`, type: "text/csv; charset=utf-8", body: found.text };
  }
  if (query.form !== "pdf") throw new ServiceError("not-found", "Ask for pdf, xlsx or csv.");
  const printed = await printPdf(casePage(document, { paper, fontFaces: printFontFaces(), backHref: "" }));
  if (printed.status === "ok") return { name: ".pdf", type: "application/pdf", body: printed.bytes };
  throw new ServiceError(
    "precondition",
    printed.status === "no-program"
      ? "This server has no program that prints pages. Open the document and use your browser's print: it gives the same pages."
      : "Printing failed on this server; its log says why. Open the document and use your browser's print: it gives the same pages.",
  );
}
