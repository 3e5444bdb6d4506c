import { createHmac } from "node:crypto";
import type { ComfortReportRow } from "@/db/queries/comfort";
import {
  findReportAfter,
  listDueWebhooks,
  type ReportWebhookRow,
  updateReportWebhook,
} from "@/db/queries/report-webhooks";
import { listDesks, listZones } from "@/db/queries/zones";
import { waitAfterMs } from "@/lib/comfort-reports/mail/retry";
import type { Context } from "../context";

/** Longest wait for a receiver [ms]. */
const ANSWER_MS = 5_000;
/** Reports of one webhook at a time: a flood must not hold up another building's. */
const AT_ONCE = 50;

export type Post = (url: string, init: RequestInit) => Promise<Response>;

/**
 * Posts new reports to the webhooks that are due, oldest first; one that is not taken is tried again before any after it, so
 * that each comes at least once and in order. Answers other than 2xx, and none within five seconds, are failures. Returns how many
 * were taken. Whoever keeps the time calls it; it asks nobody's leave.
 */
export async function postNewReports(
  ctx: Pick<Context, "db">,
  clock: () => number,
  post: Post = fetch,
): Promise<number> {
  let taken = 0;
  for (const webhook of listDueWebhooks(ctx.db, clock())) taken += await postTo(ctx, webhook, clock, post);
  return taken;
}

async function postTo(
  ctx: Pick<Context, "db">,
  webhook: ReportWebhookRow,
  clock: () => number,
  post: Post,
): Promise<number> {
  const { buildingId } = webhook;
  let { lastReportId } = webhook;
  for (let taken = 0; ; taken++) {
    const report = taken < AT_ONCE ? findReportAfter(ctx.db, buildingId, lastReportId) : undefined;
    if (!report) return taken;
    const fault = await postOne(webhook, bodyOf(ctx, report), clock(), post);
    if (fault !== null) {
      const failures = (taken > 0 ? 0 : webhook.failures) + 1;
      const nextTryAtMs = clock() + waitAfterMs(failures);
      updateReportWebhook(ctx.db, buildingId, { failures, lastFault: fault, nextTryAtMs });
      return taken;
    }
    lastReportId = report.id;
    updateReportWebhook(ctx.db, buildingId, { lastReportId, failures: 0, lastFault: "", lastTakenAtMs: clock() });
  }
}

/** Zone, desk, vote, wish and time; nothing that somebody wrote, and no address. */
function bodyOf({ db }: Pick<Context, "db">, report: ComfortReportRow): string {
  const { id, buildingId, zoneId, deskId, thermalSensation, preference, reportedAtMs, origin } = report;
  return JSON.stringify({
    event: "comfort-report",
    building: buildingId,
    report: id,
    zone: listZones(db, buildingId).find((zone) => zone.id === zoneId)?.code ?? null,
    desk: listDesks(db, buildingId).find((desk) => desk.id === deskId)?.code ?? null,
    thermalSensation,
    preference,
    origin,
    reportedAt: new Date(reportedAtMs).toISOString(),
  });
}

async function postOne(
  { url, secret }: ReportWebhookRow,
  body: string,
  nowMs: number,
  post: Post,
): Promise<string | null> {
  const time = String(Math.floor(nowMs / 1000));
  const headers = {
    "content-type": "application/json",
    "x-report-time": time,
    "x-report-signature": signatureOf(secret, time, body),
  };
  try {
    const signal = AbortSignal.timeout(ANSWER_MS);
    const response = await post(url, { method: "POST", body, headers, signal, redirect: "error" });
    await response.body?.cancel();
    return response.ok ? null : `The receiver answered ${response.status}.`;
  } catch (error) {
    const isTimeout = error instanceof Error && error.name === "TimeoutError";
    return isTimeout ? "The receiver did not answer within 5 seconds." : "The receiver could not be reached.";
  }
}

/** HMAC-SHA256 (RFC 2104) of time, a full stop and the body, in hexadecimal. */
export const signatureOf = (secret: string, time: string, body: string): string =>
  createHmac("sha256", secret).update(`${time}.${body}`).digest("hex");
