import { beforeAll, describe, expect, it } from "vitest";
import { listZones } from "@/db/queries/zones";
import { demoSpan, startOfLocalDate } from "@/db/seed/demo-calendar";
import { devicePlans } from "@/db/seed/device-plan";
import { seedDemoBuilding } from "@/db/seed/seed";
import { ZONE_PLANS } from "@/db/seed/zone-plan";
import { findBuildingOrRefuse } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { COST } from "@/lib/services/overcooling/shown";
import { decideChange, readChangeLog } from "@/lib/services/proposals/changes";
import { decideProposal } from "@/lib/services/proposals/decide";
import { planVerification } from "@/lib/services/proposals/plan-verification";
import { meterDays, within, zoneAirDays } from "@/lib/services/proposals/proof-data";
import { draftProposal } from "@/lib/services/proposals/save";
import { findSetpointMoves } from "@/lib/services/proposals/setpoint-moves";
import { verifyProposal } from "@/lib/services/proposals/verify";
import { mean } from "@/lib/statistics/moments";
import { proposalInputOf } from "@/test/factories/proposal";
import { testContext } from "@/test/support/database";
import { evaluateFormula } from "../overcooling/evaluate-formula";

/** The demo's zones with a low setpoint, from one summer to the end of the next. */
const SPAN = demoSpan("2026-04-20", "2027-09-18");
const CHANGED_ON = "2027-05-03";
const RAISE_K = 1.5;
const PLANS = ZONE_PLANS.filter(({ cause }) => cause === "setpoint-too-low").slice(0, 6);
const WINDOWS = {
  method: "before-after" as const,
  beforeFrom: "2026-05-04",
  beforeTo: "2026-09-16",
  afterFrom: "2027-05-05",
  afterTo: "2027-09-16",
};
const AFTER = { from: WINDOWS.afterFrom, to: WINDOWS.afterTo };

/** The same zones, people and weather, with the setpoints raised in the second year or left as they were. */
async function secondYear(isChanged: boolean) {
  const ctx = testContext();
  const override = { fromUtcSeconds: startOfLocalDate(CHANGED_ON), dropK: -RAISE_K };
  const plans = isChanged ? PLANS.map((plan) => ({ ...plan, programme: { ...plan.programme, override } })) : PLANS;
  const codes = PLANS.map(({ code }) => code);
  const devices = devicePlans().filter(({ zoneCode }) => codes.includes(zoneCode));
  const { buildingId } = await seedDemoBuilding({
    db: ctx.db,
    trends: ctx.trends,
    scope: { span: SPAN, zoneCodes: codes },
    made: { plans, devices },
  });
  const building = findBuildingOrRefuse(ctx, buildingId);
  const zoneIds = listZones(ctx.db, buildingId).map((each) => each.id);
  const levers = zoneIds.map((zoneId) => ({ zoneId, lever: "cooling-setpoint" as const, amount: RAISE_K }));
  const id = draftProposal(ctx, buildingId, proposalInputOf(0, { variants: [{ name: "Warmer", levers }] }));
  await decideProposal(ctx, buildingId, id, { status: "submitted" });
  planVerification(ctx, buildingId, id, WINDOWS);
  const result = await verifyProposal(ctx, buildingId, id);
  const { air } = await zoneAirDays(ctx, building, zoneIds);
  const energy = (await meterDays(ctx, building))?.days ?? [];
  return {
    ctx,
    building,
    id,
    result,
    proof: (name: string) => result.proofs.find((each) => each.id === name),
    airAfterC: mean(within(air, AFTER).map((each) => each.value)),
    kwhAfter: mean(within(energy, AFTER).map((each) => each.energyKwh)),
  };
}

type Year = Awaited<ReturnType<typeof secondYear>>;
let changed: Year;
let unchanged: Year;

beforeAll(async () => {
  changed = await secondYear(true);
  unchanged = await secondYear(false);
}, 120_000);

describe("the demo's second year", () => {
  it("with the change in force shows the rise of zone air that the simulation had, within its interval", () => {
    const truth = changed.airAfterC - unchanged.airAfterC;
    expect(truth).toBeGreaterThan(0.5);
    const air = changed.proof("zone-air");
    expect(air?.verdict, air?.sentence).toBe("shown");
    expect(air?.low, air?.sentence).toBeLessThan(truth);
    expect(air?.high, air?.sentence).toBeGreaterThan(truth);
  });

  it("with the change in force holds the avoided electricity of the simulation within its interval", () => {
    const truth = unchanged.kwhAfter - changed.kwhAfter;
    const energy = changed.proof("energy");
    if (!energy) throw new Error("the demo's meter has no model");
    expect(energy.low, energy.sentence).toBeLessThan(truth);
    expect(energy.high, energy.sentence).toBeGreaterThan(truth);
    expect(energy.verdict, energy.sentence).not.toBe("worse");
  });

  it("without the change calls nothing of it a success", () => {
    for (const name of ["zone-air", "degree-hours", "energy"]) {
      const proof = unchanged.proof(name);
      expect(proof?.verdict, proof?.sentence).not.toBe("shown");
    }
    expect(unchanged.result.verdict).toBe("not-shown");
  });

  it("verifies the cost of overcooling with it while the change stands, and with nothing once it is rolled back", async () => {
    const { ctx, building, id, result } = changed;
    expect(result.verdict, JSON.stringify(result.proofs.map((each) => each.sentence))).toBe("shown");
    const cost = async (year: Year) => {
      const { result } = await readKept(year.ctx, year.building.id, COST);
      if (result?.assessment.status !== "ok") throw new Error("no cost");
      return result.assessment;
    };
    const before = await cost(changed);
    expect(before.tier.number).toBeLessThan(4);
    for (const status of ["approved", "in-force"] as const) await decideProposal(ctx, building.id, id, { status });
    const proved = await cost(changed);
    expect(proved.tier).toEqual({ number: 4, label: "verified by “Second floor, one kelvin”" });
    expect(proved.headline.p50).not.toBeCloseTo(before.headline.p50, 0);
    expect(proved.lowerTiers[0]).toMatchObject({ tier: before.tier.number });
    await decideProposal(ctx, building.id, id, { status: "rolled-back", comment: "End of the trial." });
    expect((await cost(changed)).tier).toEqual(before.tier);
    const { saving, sums } = result;
    expect(saving?.parts).toContain("setpoint");
    const worth = sums?.find((each) => each.id === "worth");
    expect(worth?.value).toBeCloseTo((saving?.measuredKwh ?? 0) * (saving?.days ?? 0) * 0.092, 6);
    for (const each of sums ?? []) expect(evaluateFormula(each.working)).toBeCloseTo(each.value, 6);
  });

  it("offers the change of every zone, found in the trends on its day, and none without it", async () => {
    const moves = await findSetpointMoves(changed.ctx, changed.building);
    const up = moves.filter((each) => each.setting === "cooling-setpoint");
    expect(up.map((each) => each.code).toSorted()).toEqual(PLANS.map(({ code }) => code).toSorted());
    for (const { fromC, toC, atUtcSeconds } of up) {
      expect(toC - fromC).toBeCloseTo(RAISE_K, 1);
      expect(Math.abs(atUtcSeconds - startOfLocalDate(CHANGED_ON))).toBeLessThan(86_400);
    }
    const [first] = up;
    if (!first) throw new Error("no move was found");
    await decideChange(changed.ctx, changed.building.id, {
      zoneId: first.zoneId,
      setting: first.setting,
      atUtcSeconds: first.atUtcSeconds,
      decision: "confirmed",
      proposalId: changed.id,
      changedBy: "Controls desk",
      reason: "As proposed",
    });
    const log = readChangeLog(changed.ctx, changed.building.id, moves);
    expect(log.changes[0]?.wentBack).toBeNull();
    expect((await findSetpointMoves(unchanged.ctx, unchanged.building)).length).toBe(0);
  });
});
