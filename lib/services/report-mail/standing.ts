import { listUnsentAnswers, tryAllMailFrom } from "@/db/queries/report-mail";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";

export type UnsentAnswer = {
  reportId: number;
  answeredAtMs: number;
  state: "waiting" | "failed" | "no-address";
  fault: string;
  nextTryAtMs: number;
};

/** Answers that were not mailed, or not yet, newest first. */
export function readUnsentAnswers(ctx: Context, buildingId: number): UnsentAnswer[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listUnsentAnswers(ctx.db, buildingId).map(({ mail, reportId, answeredAtMs }) => ({
    reportId,
    answeredAtMs,
    state: mail.state as UnsentAnswer["state"],
    fault: mail.lastFault,
    nextTryAtMs: mail.nextTryAtMs,
  }));
}

/** Has all mail of a building that failed tried again at once. */
export function tryMailAgain(ctx: Context, buildingId: number): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  tryAllMailFrom(ctx.db, buildingId, ctx.now);
}
