import { and, asc, desc, eq, gt, isNull, lte, ne } from "drizzle-orm";
import type { Queryable } from "../client";
import { comfortReport, comfortReportEvent } from "../schema/comfort";
import { reportAnswerMail, reportMailRecipient, reportMailServer } from "../schema/report-mail";
import type { ComfortReportRow } from "./comfort";

export type MailServerRow = typeof reportMailServer.$inferSelect;
export type MailRecipientRow = typeof reportMailRecipient.$inferSelect;
export type NewMailRecipient = typeof reportMailRecipient.$inferInsert;
export type AnswerMailRow = typeof reportAnswerMail.$inferSelect;

export function findMailServer(db: Queryable, buildingId: number): MailServerRow | undefined {
  return db.select().from(reportMailServer).where(eq(reportMailServer.buildingId, buildingId)).get();
}

export function upsertMailServer(db: Queryable, row: MailServerRow): void {
  db.insert(reportMailServer).values(row).onConflictDoUpdate({ target: reportMailServer.buildingId, set: row }).run();
}

export function deleteMailServer(db: Queryable, buildingId: number): void {
  db.delete(reportMailServer).where(eq(reportMailServer.buildingId, buildingId)).run();
}

export function listMailRecipients(db: Queryable, buildingId: number): MailRecipientRow[] {
  return db
    .select()
    .from(reportMailRecipient)
    .where(eq(reportMailRecipient.buildingId, buildingId))
    .orderBy(asc(reportMailRecipient.address))
    .all();
}

/** Recipients whose next try is due, of buildings with a mail server; those given up are left alone. */
export function listDueRecipients(
  db: Queryable,
  nowMs: number,
): { recipient: MailRecipientRow; server: MailServerRow }[] {
  return db
    .select({ recipient: reportMailRecipient, server: reportMailServer })
    .from(reportMailRecipient)
    .innerJoin(reportMailServer, eq(reportMailServer.buildingId, reportMailRecipient.buildingId))
    .where(and(lte(reportMailRecipient.nextTryAtMs, nowMs), isNull(reportMailRecipient.givenUpAtMs)))
    .all();
}

export function insertMailRecipient(db: Queryable, row: NewMailRecipient): number {
  return db.insert(reportMailRecipient).values(row).returning({ id: reportMailRecipient.id }).get().id;
}

export function updateMailRecipient(db: Queryable, id: number, changes: Partial<NewMailRecipient>): void {
  db.update(reportMailRecipient).set(changes).where(eq(reportMailRecipient.id, id)).run();
}

export function deleteMailRecipient(db: Queryable, buildingId: number, id: number): number {
  const one = and(eq(reportMailRecipient.buildingId, buildingId), eq(reportMailRecipient.id, id));
  return db.delete(reportMailRecipient).where(one).run().changes;
}

/** Reports after one, in the order in which they were put on record, without those of past tables. */
export function listReportsAfter(
  db: Queryable,
  buildingId: number,
  afterId: number,
  limit: number,
): ComfortReportRow[] {
  return db
    .select()
    .from(comfortReport)
    .where(
      and(eq(comfortReport.buildingId, buildingId), gt(comfortReport.id, afterId), ne(comfortReport.origin, "import")),
    )
    .orderBy(asc(comfortReport.id))
    .limit(limit)
    .all();
}

export function insertAnswerMail(db: Queryable, row: typeof reportAnswerMail.$inferInsert): void {
  db.insert(reportAnswerMail).values(row).run();
}

/** An answer's mail with what it is made of. */
export type DueAnswer = {
  mail: AnswerMailRow;
  answer: string;
  report: ComfortReportRow;
  server: MailServerRow;
};

/** Answers whose next try is due, oldest first, of buildings with a mail server. */
export function listDueAnswers(db: Queryable, nowMs: number, limit: number): DueAnswer[] {
  return db
    .select({
      mail: reportAnswerMail,
      answer: comfortReportEvent.answer,
      report: comfortReport,
      server: reportMailServer,
    })
    .from(reportAnswerMail)
    .innerJoin(comfortReportEvent, eq(comfortReportEvent.id, reportAnswerMail.eventId))
    .innerJoin(comfortReport, eq(comfortReport.id, comfortReportEvent.reportId))
    .innerJoin(reportMailServer, eq(reportMailServer.buildingId, reportAnswerMail.buildingId))
    .where(and(eq(reportAnswerMail.state, "waiting"), lte(reportAnswerMail.nextTryAtMs, nowMs)))
    .orderBy(asc(reportAnswerMail.eventId))
    .limit(limit)
    .all();
}

export function updateAnswerMail(db: Queryable, eventId: number, changes: Partial<AnswerMailRow>): void {
  db.update(reportAnswerMail).set(changes).where(eq(reportAnswerMail.eventId, eventId)).run();
}

/** Mail of the answers to one report. */
export function listAnswerMailOf(db: Queryable, reportId: number): AnswerMailRow[] {
  return db
    .select({ mail: reportAnswerMail })
    .from(reportAnswerMail)
    .innerJoin(comfortReportEvent, eq(comfortReportEvent.id, reportAnswerMail.eventId))
    .where(eq(comfortReportEvent.reportId, reportId))
    .all()
    .map(({ mail }) => mail);
}

/** Answers that wait or were given up, newest first. */
export function listUnsentAnswers(
  db: Queryable,
  buildingId: number,
): { mail: AnswerMailRow; reportId: number; answeredAtMs: number }[] {
  return db
    .select({ mail: reportAnswerMail, reportId: comfortReportEvent.reportId, answeredAtMs: comfortReportEvent.atMs })
    .from(reportAnswerMail)
    .innerJoin(comfortReportEvent, eq(comfortReportEvent.id, reportAnswerMail.eventId))
    .where(and(eq(reportAnswerMail.buildingId, buildingId), ne(reportAnswerMail.state, "sent")))
    .orderBy(desc(reportAnswerMail.eventId))
    .limit(50)
    .all();
}

/** Has everything that waits for its next try, or was given up, tried again from a moment on. */
export function tryAllMailFrom(db: Queryable, buildingId: number, atMs: number): void {
  const anew = { failures: 0, nextTryAtMs: atMs };
  db.update(reportMailRecipient)
    .set({ ...anew, givenUpAtMs: null })
    .where(and(eq(reportMailRecipient.buildingId, buildingId), gt(reportMailRecipient.failures, 0)))
    .run();
  for (const state of ["waiting", "failed"] as const)
    db.update(reportAnswerMail)
      .set({ ...anew, state: "waiting", settledAtMs: null })
      .where(and(eq(reportAnswerMail.buildingId, buildingId), eq(reportAnswerMail.state, state)))
      .run();
}
