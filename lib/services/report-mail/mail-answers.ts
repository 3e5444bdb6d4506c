import { findBuilding } from "@/db/queries/buildings";
import { type DueAnswer, listDueAnswers, updateAnswerMail } from "@/db/queries/report-mail";
import { answerMail } from "@/lib/comfort-reports/mail/answer-mail";
import { MOST_TRIES, waitAfterMs } from "@/lib/comfort-reports/mail/retry";
import type { Context } from "../context";
import { type SendMail, sendMail } from "./send";

const AT_ONCE = 50;

/**
 * Mails answers to occupants who left an address, in the language of their report and with its private address. A mail that is not
 * taken is tried again, then given up with the reason; one whose address was deleted in between is not sent. Returns how many were
 * sent. Whoever keeps the time calls it; it asks nobody's leave.
 */
export async function mailAnswers(
  ctx: Pick<Context, "db">,
  clock: () => number,
  send: SendMail = sendMail,
): Promise<number> {
  let sent = 0;
  for (const due of listDueAnswers(ctx.db, clock(), AT_ONCE)) if (await mailOne(ctx, due, clock, send)) sent++;
  return sent;
}

async function mailOne(
  ctx: Pick<Context, "db">,
  { mail, answer, report, server }: DueAnswer,
  clock: () => number,
  send: SendMail,
): Promise<boolean> {
  const building = findBuilding(ctx.db, report.buildingId);
  if (!building) return false;
  const to = report.replyAddress;
  if (to === null) {
    updateAnswerMail(ctx.db, mail.eventId, { state: "no-address", settledAtMs: clock() });
    return false;
  }
  const { language, followToken, reportedAtMs } = report;
  const follow = followToken === null ? null : `${server.siteAddress}/report/follow/${followToken}`;
  const at = localMoment(reportedAtMs, building.timeZone, language);
  const fate = await send(server, {
    ...answerMail(answer, { language, at, follow }),
    to,
    id: `answer-${mail.eventId}`,
  });
  if (fate.status === "sent") {
    updateAnswerMail(ctx.db, mail.eventId, { state: "sent", lastFault: "", settledAtMs: clock() });
    return true;
  }
  const failures = mail.failures + 1;
  const isOver = fate.isFinal || failures >= MOST_TRIES;
  updateAnswerMail(ctx.db, mail.eventId, {
    failures,
    // A server's refusal may repeat the address, which is to go with the report's.
    lastFault: fate.reason.replaceAll(to, "the address"),
    nextTryAtMs: clock() + waitAfterMs(failures),
    ...(isOver ? { state: "failed" as const, settledAtMs: clock() } : {}),
  });
  return false;
}

function localMoment(atMs: number, timeZone: string, language: string): string {
  const style = { dateStyle: "long", timeStyle: "short", timeZone } as const;
  const [known = "en-GB"] = Intl.DateTimeFormat.supportedLocalesOf(language === "en" ? "en-GB" : [language, "en-GB"]);
  return new Intl.DateTimeFormat(known, style).format(atMs);
}
