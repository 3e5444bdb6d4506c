import { z } from "zod";
import { findMailServer } from "@/db/queries/report-mail";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { type SendMail, sendMail } from "./send";

const input = z.object({
  to: z.string().trim().max(254).pipe(z.email("Write a mail address such as name@example.com.")),
});

/** Sends one mail at once by the server on record. What went wrong is refused with the server's own words. */
export async function sendTestMail(
  ctx: Context,
  buildingId: number,
  wanted: z.input<typeof input>,
  send: SendMail = sendMail,
): Promise<void> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const { to } = parseInput(input, wanted);
  const server = findMailServer(ctx.db, buildingId);
  if (!server) throw new ServiceError("precondition", "Set up the mail server first, then send the test mail.");
  const fate = await send(server, {
    to,
    id: `test-${buildingId}-${ctx.now}`,
    subject: `Test mail (${building.name})`,
    text: `Mail about comfort reports of ${building.name} can be sent.\n\n${server.siteAddress}/buildings/${buildingId}/comfort-reports/mail`,
  });
  if (fate.status === "failed") throw new ServiceError("precondition", fate.reason);
}
