import { randomBytes } from "node:crypto";
import { z } from "zod";
import {
  deleteReportWebhook,
  findReportWebhook,
  newestReportId,
  type ReportWebhookRow,
  upsertReportWebhook,
} from "@/db/queries/report-webhooks";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { parseInput } from "../parse";

const ADDRESS = "Write the whole address, beginning with https:// (http:// to this machine alone).";
const LOOPBACK = new Set(["localhost", "127.0.0.1", "[::1]"]);

const webhookInput = z.object({
  url: z
    .string()
    .trim()
    .max(500, "Keep the address under 500 characters.")
    .refine((text) => {
      if (!URL.canParse(text)) return false;
      const { protocol, hostname, username } = new URL(text);
      return username === "" && (protocol === "https:" || (protocol === "http:" && LOOPBACK.has(hostname)));
    }, ADDRESS),
});

export type { ReportWebhookRow };

export function readReportWebhook(ctx: Context, buildingId: number): ReportWebhookRow | null {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return findReportWebhook(ctx.db, buildingId) ?? null;
}

/** Sets where new reports are posted to, with a new secret. Reports from now on are posted, none from before. */
export function setReportWebhook(ctx: Context, buildingId: number, input: z.input<typeof webhookInput>): void {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const { url } = parseInput(webhookInput, input);
  upsertReportWebhook(ctx.db, {
    buildingId,
    url,
    secret: randomBytes(32).toString("base64url"),
    lastReportId: newestReportId(ctx.db, buildingId),
    failures: 0,
    nextTryAtMs: 0,
    lastFault: "",
    lastTakenAtMs: null,
    createdBy: actorName(actor),
    createdAtMs: ctx.now,
  });
}

/** Ends the posting. */
export function endReportWebhook(ctx: Context, buildingId: number): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  deleteReportWebhook(ctx.db, buildingId);
}
