import { z } from "zod";
import { findVerificationPlan, saveVerificationPlan, type VerificationPlanRow } from "@/db/queries/verifications";
import { VERIFICATION_METHODS } from "@/lib/proposals/verification-plan";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { findProposalOrRefuse } from "./find";

const date = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, "Give the day as YYYY-MM-DD.")
  .refine((each) => dayNumberFromLocalDate(each) !== null, "There is no such day.");

const planInput = z
  .object({ method: z.enum(VERIFICATION_METHODS), beforeFrom: date, beforeTo: date, afterFrom: date, afterTo: date })
  .refine((each) => each.beforeFrom <= each.beforeTo, {
    path: ["beforeTo"],
    message: "The window before ends before it begins.",
  })
  .refine((each) => each.afterFrom <= each.afterTo, {
    path: ["afterTo"],
    message: "The window after ends before it begins.",
  })
  .refine((each) => each.beforeTo < each.afterFrom, {
    path: ["afterFrom"],
    message: "The windows overlap: the one after begins when the one before is over.",
  });

export type VerificationPlanInput = z.input<typeof planInput>;

/** Sets how a proposal is to be proved. A switchback needs a trial that is planned as one. */
export function planVerification(ctx: Context, buildingId: number, id: number, input: VerificationPlanInput): void {
  const by = actorName(requireFacilities(ctx));
  findBuildingOrRefuse(ctx, buildingId);
  const row = findProposalOrRefuse(ctx, buildingId, id);
  const parsed = parseInput(planInput, input);
  if (parsed.method === "switchback" && row.plan.switchback === null)
    throw new ServiceError("invalid", "The trial of this proposal is in steps: plan alternate weeks first.", {
      method: "The trial has no alternate weeks.",
    });
  const begins = parsed.method === "switchback" ? row.plan.switchback?.beginsOn : undefined;
  if (begins && parsed.afterFrom !== begins)
    throw new ServiceError("invalid", "The window after does not begin with the calendar of alternate weeks.", {
      afterFrom: `The first of the alternate weeks begins on ${begins}: give that day.`,
    });
  saveVerificationPlan(ctx.db, { ...parsed, proposalId: id, enteredBy: by, enteredAtMs: ctx.now });
}

export function readVerificationPlan(ctx: Context, buildingId: number, id: number): VerificationPlanRow | null {
  requireFacilities(ctx);
  findProposalOrRefuse(ctx, buildingId, id);
  return findVerificationPlan(ctx.db, id) ?? null;
}
