import { z } from "zod";
import { inTransaction } from "@/db/client";
import { findComfortReport, updateComfortReport } from "@/db/queries/comfort";
import { insertReportEvent, listReportEvents, type ReportEventRow } from "@/db/queries/report-events";
import { findMailServer, insertAnswerMail, listAnswerMailOf } from "@/db/queries/report-mail";
import type { AnswerMailState } from "@/lib/comfort-reports/mail/mail-kinds";
import { nextStates, REPORT_ACTIONS, REPORT_STATES, STATE_WORDS } from "@/lib/comfort-reports/report-state";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

export type { ReportEventRow };

const stepInput = z.object({
  state: z.enum(REPORT_STATES, "Choose a state, or leave it as it is.").nullable().default(null),
  action: z.enum(REPORT_ACTIONS, "Choose what was done, or leave it open.").nullable().default(null),
  /** When the action took effect. */
  actedAtMs: z.number("Write the date on which it was done.").nullable().default(null),
  note: z.string().trim().max(1000, "Keep it under 1,000 characters.").default(""),
  answer: z.string().trim().max(1000, "Keep it under 1,000 characters.").default(""),
});
export type ReportStepInput = z.input<typeof stepInput>;

/** A step, with the mail of its answer where one was to be sent. */
export type ReportStep = ReportEventRow & {
  mail: { state: AnswerMailState; fault: string; settledAtMs: number | null } | null;
};

/** What was done about a report, first things first. */
export function readReportSteps(ctx: Context, buildingId: number, reportId: number): ReportStep[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  if (!findComfortReport(ctx.db, buildingId, reportId))
    throw new ServiceError("not-found", "This comfort report does not exist.");
  const mails = new Map(listAnswerMailOf(ctx.db, reportId).map((mail) => [mail.eventId, mail]));
  return listReportEvents(ctx.db, reportId).map((event) => {
    const mail = mails.get(event.id);
    return {
      ...event,
      mail: mail ? { state: mail.state, fault: mail.lastFault, settledAtMs: mail.settledAtMs } : null,
    };
  });
}

/**
 * Takes a step with a report: another state, something done about it, an answer, or a note; with who and when. An answer
 * alone brings it to "answered", and goes by mail as well where the occupant left an address and the building has a mail
 * server. Refuses a state that does not follow the present one, and an answer that is blank.
 */
export function takeReportStep(ctx: Context, buildingId: number, reportId: number, input: ReportStepInput): void {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const step = parseInput(stepInput, input);
  inTransaction(ctx.db, (tx) => {
    const report = findComfortReport(tx, buildingId, reportId);
    if (!report) throw new ServiceError("not-found", "This comfort report does not exist.");
    const answers = step.answer !== "" && nextStates(report.state).includes("answered");
    const wanted = step.state === report.state ? null : step.state;
    const state = wanted ?? (answers ? "answered" : null);
    const refuse = (field: string, message: string) => new ServiceError("invalid", message, { [field]: message });
    if (wanted && !nextStates(report.state).includes(wanted))
      throw refuse(
        "state",
        `A report that is ${STATE_WORDS[report.state]} cannot be ${STATE_WORDS[wanted]} next; it may be ${nextStates(
          report.state,
        )
          .map((each) => STATE_WORDS[each])
          .join(", ")}.`,
      );
    if (wanted === "answered" && step.answer === "") throw refuse("answer", "Write what the occupant is to read.");
    if (step.action === "not-changed" && step.answer === "")
      throw refuse("answer", "Tell the occupant why nothing is changed.");
    if (step.action !== null && step.action !== "not-changed" && step.note === "")
      throw refuse("note", "Write what was changed, from what to what.");
    if (step.actedAtMs !== null && step.actedAtMs > ctx.now)
      throw refuse("actedOn", "This day lies ahead: write it down once it is done.");
    if (!state && !step.action && !step.note && !step.answer)
      throw refuse("note", "Nothing was entered: choose a state, an action, or write something.");
    const eventId = insertReportEvent(tx, {
      ...step,
      reportId,
      state,
      actedAtMs: step.action === null ? null : (step.actedAtMs ?? ctx.now),
      atMs: ctx.now,
      by: actorName(actor),
    });
    if (step.answer !== "" && report.replyAddress !== null && findMailServer(tx, buildingId))
      insertAnswerMail(tx, { eventId, buildingId, nextTryAtMs: ctx.now });
    updateComfortReport(tx, reportId, {
      ...(state ? { state } : { state: report.state }),
      ...(step.answer !== "" && report.answeredAtMs === null ? { answeredAtMs: ctx.now } : {}),
      ...(state === "closed" ? { closedAtMs: ctx.now } : {}),
      ...(state === "reopened" ? { closedAtMs: null } : {}),
    });
  });
}
