import { findBuilding } from "@/db/queries/buildings";
import type { ComfortReportRow } from "@/db/queries/comfort";
import {
  listDueRecipients,
  listReportsAfter,
  type MailRecipientRow,
  type MailServerRow,
  updateMailRecipient,
} from "@/db/queries/report-mail";
import { listDesks, listZones } from "@/db/queries/zones";
import { nextDailyMs } from "@/lib/comfort-reports/mail/daily-hour";
import { newReportsMail } from "@/lib/comfort-reports/mail/new-reports-mail";
import { MOST_TRIES, waitAfterMs } from "@/lib/comfort-reports/mail/retry";
import { formatLocal } from "@/lib/time/format";
import { zoneTable } from "@/lib/time/zone-table";
import type { Context } from "../context";
import { type SendMail, sendMail } from "./send";

/** Reports of one mail at most: of a day with more the rest comes in the next. */
const AT_ONCE = 1000;
/** Reports within this time of a mail come together in the next [ms]: a flood is not a flood of mail. */
const TOGETHER_MS = 60_000;

/**
 * Mails new reports to the recipients that are due: at once, those of the same minute together, or a day's at their hour. A mail
 * that is not taken is tried again as the webhook's posts are, given up after some hours or when its recipient is refused for
 * good, and then goes on from the same report once somebody has it tried again. Returns how many mails were sent. Whoever
 * keeps the time calls it; it asks nobody's leave.
 */
export async function mailNewReports(
  ctx: Pick<Context, "db">,
  clock: () => number,
  send: SendMail = sendMail,
): Promise<number> {
  let sent = 0;
  for (const { recipient, server } of listDueRecipients(ctx.db, clock()))
    if (await mailTo(ctx, recipient, server, clock, send)) sent++;
  return sent;
}

async function mailTo(
  ctx: Pick<Context, "db">,
  recipient: MailRecipientRow,
  server: MailServerRow,
  clock: () => number,
  send: SendMail,
): Promise<boolean> {
  const building = findBuilding(ctx.db, recipient.buildingId);
  const found = listReportsAfter(ctx.db, recipient.buildingId, recipient.lastReportId, AT_ONCE);
  const last = found.at(-1);
  if (!building) return false;
  const { dailyHour, zoneIds } = recipient;
  const nextTryAtMs = dailyHour === null ? clock() : nextDailyMs(clock(), zoneTable(building.timeZone), dailyHour);
  if (!last) {
    // Nothing to tell: a recipient at once is looked at again at the next turn, without a write.
    if (dailyHour !== null) updateMailRecipient(ctx.db, recipient.id, { nextTryAtMs });
    return false;
  }
  const reports = zoneIds === null ? found : found.filter(({ zoneId }) => zoneIds.includes(zoneId));
  const done = { lastReportId: last.id, failures: 0, lastFault: "", nextTryAtMs };
  if (reports.length === 0) {
    updateMailRecipient(ctx.db, recipient.id, done);
    return false;
  }
  const fate = await send(server, {
    ...newReportsMail(building.name, mailed(ctx, reports, server, building.timeZone), addresses(server)),
    to: recipient.address,
    id: `reports-${recipient.id}-${last.id}`,
  });
  if (fate.status === "sent") {
    const wait = dailyHour === null ? clock() + TOGETHER_MS : nextTryAtMs;
    updateMailRecipient(ctx.db, recipient.id, { ...done, nextTryAtMs: wait, lastSentAtMs: clock() });
    return true;
  }
  const failures = recipient.failures + 1;
  updateMailRecipient(ctx.db, recipient.id, {
    failures,
    lastFault: fate.reason,
    nextTryAtMs: clock() + waitAfterMs(failures),
    givenUpAtMs: fate.isFinal || failures >= MOST_TRIES ? clock() : null,
  });
  return false;
}

const addresses = ({ siteAddress, buildingId }: MailServerRow) => ({
  inbox: `${siteAddress}/buildings/${buildingId}/comfort-reports`,
  settings: `${siteAddress}/buildings/${buildingId}/comfort-reports/mail`,
});

function mailed(
  { db }: Pick<Context, "db">,
  reports: readonly ComfortReportRow[],
  server: MailServerRow,
  timeZone: string,
) {
  const zones = new Map(listZones(db, server.buildingId).map(({ id, code }) => [id, code]));
  const desks = new Map(listDesks(db, server.buildingId).map(({ id, code }) => [id, code]));
  return reports.map(({ id, zoneId, deskId, reportedAtMs, thermalSensation, preference, note }) => ({
    at: formatLocal(reportedAtMs, timeZone, "date-time"),
    zone: zones.get(zoneId) ?? "",
    desk: server.namesDesk && deskId !== null ? (desks.get(deskId) ?? null) : null,
    thermalSensation,
    preference,
    note: server.repeatsNote ? note : "",
    address: `${addresses(server).inbox}/${id}`,
  }));
}
