import { z } from "zod";
import {
  deleteMailRecipient,
  insertMailRecipient,
  listMailRecipients,
  type MailRecipientRow,
} from "@/db/queries/report-mail";
import { newestReportId } from "@/db/queries/report-webhooks";
import { listZones } from "@/db/queries/zones";
import { nextDailyMs } from "@/lib/comfort-reports/mail/daily-hour";
import { zoneTable } from "@/lib/time/zone-table";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

const recipientInput = z.object({
  address: z
    .string()
    .trim()
    .max(254, "Keep it under 255 characters.")
    .pipe(z.email("Write a mail address such as name@example.com.")),
  /** Codes parted by commas; empty: all zones. */
  zoneCodes: z.string().max(2000, "Keep it under 2,000 characters.").default(""),
  dailyHour: z
    .number("Choose at once, or an hour of the day.")
    .int("Choose a full hour.")
    .min(0, "Choose an hour from 0 to 23.")
    .max(23, "Choose an hour from 0 to 23.")
    .nullable()
    .default(null),
});
export type MailRecipientInput = z.input<typeof recipientInput>;

export type MailRecipientView = MailRecipientRow & { zoneCodes: string[] | null };

/** Who gets mail about new reports, by address. */
export function readMailRecipients(ctx: Context, buildingId: number): MailRecipientView[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const codes = new Map(listZones(ctx.db, buildingId).map(({ id, code }) => [id, code]));
  return listMailRecipients(ctx.db, buildingId).map((row) => ({
    ...row,
    zoneCodes: row.zoneIds?.map((id) => codes.get(id) ?? "a zone that is gone") ?? null,
  }));
}

/** Tells an address of reports from now on, at once or once a day. Refuses zones that are not there, and an address twice. */
export function addMailRecipient(ctx: Context, buildingId: number, input: MailRecipientInput): number {
  const actor = requireFacilities(ctx);
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const { address, zoneCodes, dailyHour } = parseInput(recipientInput, input);
  const refuse = (field: string, message: string) => new ServiceError("invalid", message, { [field]: message });
  const wanted = [...new Set(zoneCodes.split(/[,;\n]/).map((code) => code.trim()))].filter((code) => code !== "");
  const ids = new Map(listZones(ctx.db, buildingId).map(({ id, code }) => [code.toLowerCase(), id]));
  const unknown = wanted.filter((code) => !ids.has(code.toLowerCase()));
  if (unknown.length > 0) throw refuse("zoneCodes", `There is no zone ${unknown.join(", ")} in this building.`);
  if (listMailRecipients(ctx.db, buildingId).some((each) => each.address.toLowerCase() === address.toLowerCase()))
    throw refuse("address", "This address is on the list already: take it off first to change what it gets.");
  return insertMailRecipient(ctx.db, {
    buildingId,
    address,
    zoneIds: wanted.length === 0 ? null : wanted.map((code) => ids.get(code.toLowerCase()) as number),
    dailyHour,
    lastReportId: newestReportId(ctx.db, buildingId),
    nextTryAtMs: dailyHour === null ? ctx.now : nextDailyMs(ctx.now, zoneTable(timeZone), dailyHour),
    createdBy: actorName(actor),
    createdAtMs: ctx.now,
  });
}

/** Takes an address off the list for good. */
export function removeMailRecipient(ctx: Context, buildingId: number, recipientId: number): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  if (deleteMailRecipient(ctx.db, buildingId, recipientId) === 0)
    throw new ServiceError("not-found", "This address is no longer on the list.");
}
