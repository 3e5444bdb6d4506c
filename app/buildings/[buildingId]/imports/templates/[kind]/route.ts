import { TEMPLATES } from "@/lib/importers/tables/templates";

type Params = { params: Promise<{ kind: string }> };

/** A table to fill in: heading and example rows. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  const { kind } = await params;
  const template = Object.entries(TEMPLATES).find(([name]) => name === kind)?.[1];
  if (!template) return new Response("There is no such template.", { status: 404 });
  return new Response(template.text, {
    headers: {
      "content-type": "text/csv; charset=utf-8",
      "content-disposition": `attachment; filename="${template.fileName}"`,
    },
  });
}
