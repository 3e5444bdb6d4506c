import { expect, test } from "vitest";
import { insertVerificationResult } from "@/db/queries/verifications";
import { readRollUp } from "@/lib/services/business-case/roll-up";
import { registerDevice } from "@/lib/services/devices/register";
import { decideProposal } from "@/lib/services/proposals/decide";
import { draftProposal } from "@/lib/services/proposals/save";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { bringTrends, bringWeather } from "@/test/factories/office-records";
import { proposalInputOf } from "@/test/factories/proposal";
import { refusalOf } from "@/test/support/refusal";

test("a proposal counts once, in the farthest stage that it has reached, and no longer when it is rolled back", async () => {
  const office = smallOffice({ presentCoolingSetpointC: 21.5 });
  const { ctx, buildingId, zoneId } = office;
  bringWeather(office);
  await bringTrends(office);
  registerDevice(ctx, buildingId, heaterInput());
  const levers = [{ zoneId, lever: "personal-device" as const, amount: 100 }];
  const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId, { variants: [{ name: "Foot warmers", levers }] }));
  const stages = () => {
    const row = readRollUp(ctx).currencies[0]?.rows[0];
    return row ? [row.stages.proposed?.count, row.stages.approved?.count, row.stages.verified?.count] : [];
  };
  const found = (verdict: "too-early" | "shown") =>
    insertVerificationResult(ctx.db, {
      proposalId: id,
      verdict,
      result: { verdict, sentence: `It is ${verdict}.`, proofs: [] },
      enteredBy: "a test",
      enteredAtMs: ctx.now,
    });
  expect(stages()).toEqual([]);
  await decideProposal(ctx, buildingId, id, { status: "submitted" });
  expect(stages()).toEqual([1, undefined, undefined]);
  await decideProposal(ctx, buildingId, id, { status: "approved" });
  await decideProposal(ctx, buildingId, id, { status: "in-force" });
  expect(stages()).toEqual([undefined, 1, undefined]);
  found("too-early");
  expect(stages()).toEqual([undefined, 1, undefined]);
  found("shown");
  expect(stages()).toEqual([undefined, undefined, 1]);
  expect(readRollUp(ctx).currencies[0]?.rows[0]?.proposals[0]?.verification).toBe("It is shown.");
  expect(readRollUp(ctx).energy.electricKwh.verified?.range.together.p50).toBeGreaterThan(0);
  await decideProposal(ctx, buildingId, id, { status: "rolled-back", comment: "A test." });
  expect(stages()).toEqual([]);
  const anonymous = { ...ctx, actor: { kind: "anonymous" as const } };
  expect((await refusalOf(() => readRollUp(anonymous))).code).toBe("unauthenticated");
});
