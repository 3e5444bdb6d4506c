import { NextResponse } from "next/server";
import { passOver } from "@/app/_server/pass-over";
import { requestContext } from "@/app/_server/request-context";
import { isFromElsewhere } from "@/app/_server/same-origin";
import { requireFacilities } from "@/lib/services/authorise";
import { ServiceError } from "@/lib/services/errors";
import { LARGEST_REGISTER_BYTES, receiveRegister } from "@/lib/services/registers/receive";

type Params = { params: Promise<{ buildingId: string }> };

/** Takes a spreadsheet from its form and leads to the mapping of its columns. Only the site's own pages may post here. */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  const { buildingId } = await params;
  if (isFromElsewhere(request)) return new Response("This form belongs to another site.", { status: 403 });
  const page = `/buildings/${Number(buildingId)}/devices/bring-in`;
  try {
    const ctx = await requestContext();
    requireFacilities(ctx);
    if (Number(request.headers.get("content-length") ?? Number.POSITIVE_INFINITY) > LARGEST_REGISTER_BYTES + 10_000) {
      await passOver(request);
      throw new ServiceError("too-large", "The file is over 10 MB: take pictures and other sheets out of it.");
    }
    const file = (await request.formData()).get("file");
    if (!(file instanceof File) || file.name === "")
      throw new ServiceError("invalid", "No file was chosen: choose one and send the form again.");
    const bytes = new Uint8Array(await file.arrayBuffer());
    return seeOther(`${page}/${await receiveRegister(ctx, Number(buildingId), { name: file.name, bytes })}`);
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    if (error.code === "unauthenticated") return seeOther(`/sign-in?next=${page}`);
    if (error.code === "not-found") return new Response(error.message, { status: 404 });
    return seeOther(`${page}?${new URLSearchParams({ problem: error.message })}`);
  }
}

const seeOther = (location: string): Response => new NextResponse(null, { status: 303, headers: { location } });
