import { describe, expect, it } from "vitest";
import { listPoints } from "@/db/queries/points";
import { overrideAssumption, withdrawOverride } from "@/lib/services/assumptions/override";
import { reviseBuilding } from "@/lib/services/buildings/save";
import { registerDevice, retireDevice } from "@/lib/services/devices/register";
import { readCostOfOvercooling } from "@/lib/services/overcooling/assess";
import { buildingInputOf } from "@/test/factories/building";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";
import { bringTrends, bringWeather } from "@/test/factories/office-records";

type Office = ReturnType<typeof smallOffice>;

async function costOf({ ctx, buildingId }: Office, now = ctx.now) {
  const cost = await readCostOfOvercooling({ ...ctx, now }, buildingId);
  if (cost.assessment.status !== "ok") throw new Error(JSON.stringify(cost.assessment.findings));
  return { ...cost, assessment: cost.assessment };
}

const codesOf = ({ assessment }: Awaited<ReturnType<typeof costOf>>) => assessment.findings.map(({ code }) => code);
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe("the cost of overcooling of a small building", () => {
  it("is a screening without weather, an estimate with it, and rests on zones once they are trended", async () => {
    const office = smallOffice({ presentCoolingSetpointC: 21.5 });
    const { ctx, buildingId } = office;
    registerDevice(ctx, buildingId, heaterInput());
    const screening = await costOf(office);
    expect(screening.assessment.tier.number).toBe(0);
    expect(screening.record).toBeNull();
    expect(codesOf(screening)).toContain("weather-missing");

    bringWeather(office);
    const estimate = await costOf(office);
    expect(estimate.assessment.tier.number).toBe(1);
    expect(codesOf(estimate)).not.toContain("weather-missing");
    expect(estimate.assessment.lowerTiers.map(({ tier }) => tier)).toEqual([0]);

    await bringTrends(office);
    const measured = await costOf(office);
    expect(measured.assessment.tier.number).toBe(2);
    expect(measured.assessment.zones.filter((zone) => zone.measured).map(({ code }) => code)).toEqual(["2-14"]);
    expect(measured.assessment.lowerTiers.map(({ tier }) => tier)).toEqual([1, 0]);
    for (const { assessment } of [screening, estimate, measured]) {
      const { headline, components, zones } = assessment;
      expect(headline.p10).toBeLessThanOrEqual(headline.p50);
      expect(headline.p50).toBeLessThanOrEqual(headline.p90);
      expect(headline.p50).toBeGreaterThan(0);
      expect(sum(components.map((each) => each.contribution))).toBeCloseTo(headline.p50, 6);
      expect(sum(zones.map((each) => each.contribution))).toBeCloseTo(headline.p50, 6);
    }
  });

  it("counts a heater at its stated value by hand, and not once it is retired", async () => {
    const office = smallOffice();
    const { ctx, buildingId } = office;
    const settings = [settingInput({ basis: "plug-meter", powerW: 1400, currentA: null, hoursPerYear: 500 })];
    const id = registerDevice(ctx, buildingId, heaterInput({ settings }));
    const heater = (await costOf(office)).assessment.components.find((each) => each.id === "heater-energy");
    // 1.4 kW for 500 h, 0.6 of it in the cooling season's occupied hours, at 0.09 per kWh: 420 kWh and 37.80.
    expect(heater?.electricKwh).toBeCloseTo(420, 6);
    expect(heater?.statedValue).toBeCloseTo(37.8, 6);
    retireDevice(ctx, buildingId, id, "2025-06-30");
    const { assessment } = await readCostOfOvercooling(ctx, buildingId);
    expect(assessment.status).toBe("blocked");
    expect(assessment.findings.map((each) => each.code)).toEqual(["nothing-known"]);
  });

  it("never adds a demand charge to a blended price", async () => {
    const marginal = { demandPricePerKw: 15, demandMonths: 5, presentCoolingSetpointC: 21.5 };
    const office = smallOffice(marginal);
    const { ctx, buildingId } = office;
    registerDevice(ctx, buildingId, heaterInput());
    bringWeather(office);
    const withDemand = await costOf(office);
    const ids = withDemand.assessment.components.map(({ id }) => id);
    expect(ids).toContain("demand");
    const blended = buildingInputOf({ electricityPriceKind: "blended", presentCoolingSetpointC: 21.5 });
    reviseBuilding(ctx, buildingId, blended);
    const without = await costOf(office);
    expect(without.assessment.components.map(({ id }) => id)).not.toContain("demand");
    expect(codesOf(without)).toContain("demand-inside-blended-price");
  });

  it("is kept until something it rests on changes", async () => {
    const office = smallOffice({ presentCoolingSetpointC: 21.5 });
    const { ctx, buildingId } = office;
    bringWeather(office);
    const first = await costOf(office);
    const hour = 3_600_000;
    expect((await costOf(office, ctx.now + hour)).computedAtMs).toBe(first.computedAtMs);

    const id = "cooling-cop/vav-reheat-high-minimum";
    expect(first.assessment.assumptionIds).toContain(id);
    overrideAssumption(ctx, buildingId, id, { value: 2, low: 1.9, high: 2.1, reason: "Metered chiller plant" });
    const second = await costOf(office, ctx.now + 2 * hour);
    expect(second.computedAtMs).toBe(ctx.now + 2 * hour);
    expect(second.assessment.headline.p50).toBeGreaterThan(first.assessment.headline.p50);
    withdrawOverride(ctx, buildingId, id);
    const third = await costOf(office, ctx.now + 3 * hour);
    expect(third.assessment.headline).toEqual(first.assessment.headline);

    await bringTrends(office);
    const fourth = await costOf(office, ctx.now + 4 * hour);
    expect(fourth.computedAtMs).toBe(ctx.now + 4 * hour);
    const [point] = listPoints(ctx.db, buildingId).filter((each) => each.kind === "zone-air-temp");
    const warmer = {
      series: point?.id ?? 0,
      ts: Float64Array.of(Date.UTC(2025, 5, 3, 15) / 1000),
      v: Int32Array.of(25_000),
      decimals: 3,
    };
    await ctx.trends.write([warmer], 2);
    const fifth = await costOf(office, ctx.now + 5 * hour);
    expect(fifth.computedAtMs).toBe(ctx.now + 5 * hour);
    expect(fifth.assessment.headline.p50).not.toBe(fourth.assessment.headline.p50);
  });

  it("is blocked, in words, when an input makes every figure meaningless", async () => {
    const office = smallOffice({ presentCoolingSetpointC: 21.5 });
    const id = "cooling-cop/vav-reheat-high-minimum";
    overrideAssumption(office.ctx, office.buildingId, id, {
      value: 12,
      low: 11,
      high: 13,
      reason: "A slip of the pen",
    });
    const { assessment } = await readCostOfOvercooling(office.ctx, office.buildingId);
    expect(assessment.status).toBe("blocked");
    expect(assessment.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ["cop-implausible", "disqualifies"],
    ]);
  });
});
