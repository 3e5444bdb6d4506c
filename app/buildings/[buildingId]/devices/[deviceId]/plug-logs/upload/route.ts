import { NextResponse } from "next/server";
import { passOver } from "@/app/_server/pass-over";
import { requestContext } from "@/app/_server/request-context";
import { isFromElsewhere } from "@/app/_server/same-origin";
import { requireFacilities } from "@/lib/services/authorise";
import { ServiceError } from "@/lib/services/errors";
import { importPlugLog, LARGEST_PLUG_FILE_BYTES, type PlugLogAnswersInput } from "@/lib/services/plug-logs/import";

type Params = { params: Promise<{ buildingId: string; deviceId: string }> };

/** The form's own fields beside the file [bytes]. */
const FIELDS_BYTES = 10_000;
const ANSWERS = ["unit", "dateOrder", "energy"] as const;

/**
 * Takes a plug logger's file from its form and leads to the log, or back with what is open. A route, since server actions
 * stop at 1 MB. Only the site's own pages may post here.
 */
export async function POST(request: Request, { params }: Params): Promise<Response> {
  const { buildingId, deviceId } = await params;
  if (isFromElsewhere(request)) return new Response("This form belongs to another site.", { status: 403 });
  const page = `/buildings/${Number(buildingId)}/devices/${Number(deviceId)}/plug-logs`;
  const said: Record<string, string> = {};
  try {
    const ctx = await requestContext();
    requireFacilities(ctx);
    if (lengthOf(request) > LARGEST_PLUG_FILE_BYTES + FIELDS_BYTES) {
      await passOver(request);
      throw new ServiceError("too-large", "The file is over 60 MB. Bring it in week by week, or packed as .gz.");
    }
    const form = await request.formData();
    for (const name of ANSWERS) said[name] = String(form.get(name) ?? "");
    const file = form.get("file");
    if (!(file instanceof File) || file.name === "")
      throw new ServiceError("invalid", "No file was chosen: choose the logger's file and send the form again.");
    const bytes = new Uint8Array(await file.arrayBuffer());
    const outcome = await importPlugLog(
      ctx,
      Number(buildingId),
      Number(deviceId),
      { name: file.name, bytes },
      answersOf(said),
    );
    if (outcome.state === "ask")
      return seeOther(`${page}?${new URLSearchParams({ problem: outcome.message, ...said })}`);
    return seeOther(`${page}/${outcome.logId}`);
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error;
    if (error.code === "unauthenticated") return seeOther(`/sign-in?next=${page}`);
    if (error.code === "not-found") return new Response(error.message, { status: 404 });
    return seeOther(`${page}?${new URLSearchParams({ problem: error.message, ...said })}`);
  }
}

const lengthOf = (request: Request): number =>
  Number(request.headers.get("content-length") ?? Number.POSITIVE_INFINITY);

const answersOf = ({ unit = "", dateOrder, energy }: Record<string, string>): PlugLogAnswersInput => ({
  unit,
  dateOrder: dateOrder === "dmy" || dateOrder === "mdy" ? dateOrder : null,
  energy: energy === "counter" || energy === "step" ? energy : null,
});

const seeOther = (location: string): Response => new NextResponse(null, { status: 303, headers: { location } });
