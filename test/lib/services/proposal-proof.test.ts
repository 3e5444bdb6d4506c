import { describe, expect, it } from "vitest";
import { trialCalendar } from "@/lib/proposals/trial-calendar";
import { decideChange, readChangeLog } from "@/lib/services/proposals/changes";
import { decideProposal } from "@/lib/services/proposals/decide";
import { planVerification } from "@/lib/services/proposals/plan-verification";
import { draftProposal } from "@/lib/services/proposals/save";
import { readVerifications, verifyProposal } from "@/lib/services/proposals/verify";
import { smallOffice } from "@/test/factories/office";
import { proposalInputOf } from "@/test/factories/proposal";
import { season } from "@/test/factories/season";
import { refusalOf } from "@/test/support/refusal";

describe("a change of a setpoint", () => {
  it("is found in the trends, offered, confirmed under its proposal, and named when it goes back", async () => {
    const office = await season({
      setpoints: [
        [0, 21.5],
        [28, 22.5],
        [70, 21.5],
      ],
      days: 98,
    });
    const { ctx, buildingId, zoneId } = office;
    const moves = await office.moves();
    expect(moves.map(({ fromC, toC }) => [fromC, toC])).toEqual([
      [21.5, 22.5],
      [22.5, 21.5],
    ]);
    const [up] = moves;
    if (!up) throw new Error("no move was found");
    expect(readChangeLog(ctx, buildingId, moves).offered).toHaveLength(2);
    const proposalId = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
    const decision = {
      zoneId,
      setting: up.setting,
      atUtcSeconds: up.atUtcSeconds,
      decision: "confirmed" as const,
      proposalId,
      changedBy: "Controls desk",
      reason: "Trial",
    };
    await decideChange(ctx, buildingId, decision);
    const log = readChangeLog(ctx, buildingId, moves);
    expect(log.offered).toHaveLength(1);
    expect(log.changes[0]).toMatchObject({ code: "2-14", fromValue: 21.5, toValue: 22.5, proposalId });
    expect(log.changes[0]?.wentBack?.toC).toBe(21.5);
    expect((await refusalOf(() => decideChange(ctx, buildingId, decision))).code).toBe("conflict");
    const gone = { ...decision, atUtcSeconds: up.atUtcSeconds + 86_400 };
    expect((await refusalOf(() => decideChange(ctx, buildingId, gone))).message).toMatch(/no longer show/);
  });
});

const windows = {
  method: "before-after" as const,
  beforeFrom: "2025-05-06",
  beforeTo: "2025-06-13",
  afterFrom: "2025-06-16",
  afterTo: "2025-07-25",
};

async function verified(office: Awaited<ReturnType<typeof season>>, plan: typeof windows = windows) {
  const { ctx, buildingId, zoneId } = office;
  const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
  await decideProposal(ctx, buildingId, id, { status: "submitted" });
  planVerification(ctx, buildingId, id, plan);
  const result = await verifyProposal(ctx, buildingId, id);
  expect(readVerifications(ctx, buildingId, id)[0]?.verdict).toBe(result.verdict);
  return result;
}

const airOf = (result: Awaited<ReturnType<typeof verified>>) => result.proofs.find((each) => each.id === "zone-air");

describe("a verification", () => {
  it("recovers a planted rise of one kelvin within its interval and calls it shown", async () => {
    const result = await verified(
      await season({
        setpoints: [
          [0, 21.5],
          [42, 22.5],
        ],
        days: 84,
      }),
    );
    const air = airOf(result);
    expect(air?.verdict).toBe("shown");
    expect(air?.low).toBeLessThan(1);
    expect(air?.high).toBeGreaterThan(1);
    expect(result.verdict).toBe("shown");
  });

  it("does not call a change without effect a success", async () => {
    const result = await verified(
      await season({
        setpoints: [
          [0, 21.5],
          [42, 22.5],
        ],
        followsC: 21.5,
        days: 84,
      }),
    );
    expect(airOf(result)?.low).toBeLessThan(0);
    expect(airOf(result)?.high).toBeGreaterThan(0);
    expect(["not-shown", "too-early"]).toContain(result.verdict);
  });

  it("says that a few days are too early", async () => {
    const result = await verified(
      await season({
        setpoints: [
          [0, 21.5],
          [42, 22.5],
        ],
        days: 84,
      }),
      {
        ...windows,
        afterTo: "2025-06-18",
      },
    );
    expect(airOf(result)?.verdict).toBe("too-early");
    expect(result.verdict).toBe("too-early");
  });

  it("says that a zone that got colder is worse", async () => {
    const result = await verified(
      await season({
        setpoints: [
          [0, 21.5],
          [42, 20.5],
        ],
        days: 84,
      }),
    );
    expect(result.verdict).toBe("worse");
  });

  it("pairs the weeks of a switchback by the calendar that was issued, and by no other day", async () => {
    const switchback = { pairs: 6, seed: 7, beginsOn: "2025-05-12" };
    const office = await season({
      setpoints: [
        [0, 21.5],
        ...trialCalendar(switchback, switchback.beginsOn).map(({ week, setting }): [number, number] => [
          7 * (week + 1),
          setting === "proposed" ? 22.5 : 21.5,
        ]),
      ],
      days: 98,
    });
    const { ctx, buildingId, zoneId } = office;
    const input = proposalInputOf(zoneId);
    const id = draftProposal(ctx, buildingId, { ...input, plan: { ...input.plan, switchback } });
    await decideProposal(ctx, buildingId, id, { status: "submitted" });
    const plan = { method: "switchback" as const, beforeFrom: "2025-05-05", beforeTo: "2025-05-11" };
    const late = { ...plan, afterFrom: "2025-05-19", afterTo: "2025-08-10" };
    const refusal = await refusalOf(() => planVerification(ctx, buildingId, id, late));
    expect(refusal.fieldErrors.afterFrom).toMatch(/begins on 2025-05-12/);
    planVerification(ctx, buildingId, id, { ...plan, afterFrom: "2025-05-12", afterTo: "2025-08-10" });
    const result = await verifyProposal(ctx, buildingId, id);
    const air = airOf(result);
    expect(air?.sentence).toMatch(/^6 pairs of weeks/);
    expect(air?.verdict).toBe("shown");
    expect(air?.low).toBeLessThan(1);
    expect(air?.high).toBeGreaterThan(1);
  });

  it("needs an issued proposal and windows that do not overlap", async () => {
    const { ctx, buildingId, zoneId } = smallOffice();
    const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
    const early = await refusalOf(() => verifyProposal(ctx, buildingId, id));
    expect(early.message).toMatch(/windows/);
    planVerification(ctx, buildingId, id, windows);
    expect((await refusalOf(() => verifyProposal(ctx, buildingId, id))).message).toMatch(/issued/);
    const overlap = { ...windows, afterFrom: "2025-06-01" };
    const refusal = await refusalOf(() => planVerification(ctx, buildingId, id, overlap));
    expect(refusal.fieldErrors.afterFrom).toMatch(/overlap/);
    const alternate = { ...windows, method: "switchback" as const };
    expect((await refusalOf(() => planVerification(ctx, buildingId, id, alternate))).fieldErrors.method).toMatch(
      /alternate weeks/,
    );
  });
});
