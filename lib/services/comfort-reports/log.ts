import { z } from "zod";
import { insertComfortReport } from "@/db/queries/comfort";
import { findDeskByCode, findZoneByCode } from "@/db/queries/zones";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { reportColumns, reportInput } from "./report-input";

const logInput = reportInput.extend({
  origin: z.enum(["phone", "mail", "in-person", "command-line"], "Say how the report came in."),
  zoneCode: z.string().trim().default(""),
  deskCode: z.string().trim().default(""),
  /** When it was felt; the moment of entry where it is left open. */
  reportedAtMs: z.number("Write the date and the time of the report.").nullable().default(null),
});
export type LoggedReportInput = z.input<typeof logInput>;

/** Puts a report on record that somebody phoned, wrote or said. Returns its id. Refuses a time to come. */
export function logComfortReport(ctx: Context, buildingId: number, input: LoggedReportInput): number {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const { zoneCode, deskCode, reportedAtMs, origin, ...values } = parseInput(logInput, input);
  const place = placeByCode(ctx, buildingId, { zoneCode, deskCode });
  if (reportedAtMs !== null && reportedAtMs > ctx.now)
    throw new ServiceError("invalid", "The time of the report lies ahead of now.", {
      reportedAt: "Write when it was felt: this lies ahead of now.",
    });
  return insertComfortReport(ctx.db, {
    ...reportColumns(values),
    ...place,
    buildingId,
    origin,
    enteredBy: actorName(actor),
    reportedAtMs: reportedAtMs ?? ctx.now,
  }).id;
}

/** Zone and desk by their codes. A desk alone tells its zone. */
export function placeByCode(
  ctx: Pick<Context, "db">,
  buildingId: number,
  { zoneCode, deskCode }: { zoneCode: string; deskCode: string },
): { zoneId: number; deskId: number | null } {
  const refuse = (field: string, message: string) => new ServiceError("invalid", message, { [field]: message });
  const desk = deskCode ? findDeskByCode(ctx.db, buildingId, deskCode) : undefined;
  if (deskCode && !desk) throw refuse("deskCode", `There is no desk ${deskCode} in this building.`);
  const zone = zoneCode ? findZoneByCode(ctx.db, buildingId, zoneCode) : undefined;
  if (zoneCode && !zone) throw refuse("zoneCode", `There is no zone ${zoneCode} in this building.`);
  if (desk && zone && desk.zoneId !== zone.id)
    throw refuse("deskCode", `Desk ${deskCode} does not stand in zone ${zoneCode}.`);
  const zoneId = desk?.zoneId ?? zone?.id;
  if (zoneId === undefined) throw refuse("zoneCode", "Say in which zone, or at which desk.");
  return { zoneId, deskId: desk?.id ?? null };
}
