import { describe, expect, it } from "vitest";
import { listPoints } from "@/db/queries/points";
import type { Assessed } from "@/lib/overcooling/assessment";
import { importTable } from "@/lib/services/imports/import-table";
import { readKept } from "@/lib/services/kept/read-kept";
import { ResultMemory } from "@/lib/services/kept/result-memory";
import { workOutJob } from "@/lib/services/kept/work-out";
import { readEnergyMeter } from "@/lib/services/meter/read";
import { readCostOfOvercooling } from "@/lib/services/overcooling/assess";
import { COST, FIGURE_WORKING, TARGET_CURVE } from "@/lib/services/overcooling/shown";
import { readTargetCurve } from "@/lib/services/overcooling/target-curve";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { meterYearFile } from "@/test/factories/meter-year";
import { smallOffice } from "@/test/factories/office";
import { bringWeather } from "@/test/factories/office-records";
import { bytesOf } from "@/test/factories/trend-csv";
import { workingsIn } from "../overcooling/evaluate-formula";

const RULE = { acceptProposals: true, answers: {} };
const year = meterYearFile();

function estimatedOffice() {
  const office = smallOffice({ presentCoolingSetpointC: 21.5, floorAreaM2: 1500 });
  bringWeather(office);
  return office;
}

type Office = ReturnType<typeof estimatedOffice>;

const bringMeter = ({ ctx, buildingId }: Office, bytes = year) =>
  importTrendFile(ctx, buildingId, { name: "meter.csv", bytes }, RULE);

async function costOf({ ctx, buildingId }: Office): Promise<Assessed> {
  const { assessment } = await readCostOfOvercooling(ctx, buildingId);
  if (assessment.status !== "ok") throw new Error(JSON.stringify(assessment.findings));
  return assessment;
}

describe("a building with a meter", () => {
  it("has its cost calibrated to the meter, with the lower tiers beside it and the model in the working", async () => {
    const office = estimatedOffice();
    const estimate = await costOf(office);
    expect(estimate.tier.number).toBe(1);
    await bringMeter(office);
    const metered = await costOf(office);
    expect(metered.tier).toEqual({ number: 3, label: "calibrated to the meter" });
    expect(metered.lowerTiers.map((each) => each.tier)).toEqual([1, 0]);
    expect(metered.lowerTiers[0]?.p50).toBeCloseTo(estimate.headline.p50, 6);
    for (const id of ["setpoint-floor-area-share", "sensible-coil-load-share"])
      expect(metered.assumptionIds).toContain(id);

    const { shown } = await readEnergyMeter(office.ctx, office.buildingId);
    const occupied = shown?.model?.types[0]?.choice;
    if (occupied?.status !== "ok" || occupied.chosen.model.kind !== "3PC") throw new Error("another model");
    const setpoint = metered.components.find((each) => each.id === "setpoint");
    const saving = workingsIn(setpoint?.working ?? metered.working).find((each) => each.result.symbol === "S_o");
    expect(saving?.terms[0]).toMatchObject({
      symbol: "b",
      value: occupied.chosen.model.coolingSlope,
      origin: "measured",
      href: `/energy-meter?meter=${shown?.key}`,
    });
    expect(saving?.terms[0]?.source).toContain("3PC change-point model of Main Meter");
  });

  it("says so when no model may be used, and stays with what the zones and the weather tell", async () => {
    const office = estimatedOffice();
    const text = new TextDecoder().decode(year).trim().split("\n");
    await bringMeter(office, bytesOf(text.slice(0, 4500)));
    const cost = await costOf(office);
    expect(cost.tier.number).toBe(1);
    expect(cost.findings.find((each) => each.code === "meter-unused")?.evidence).toEqual({
      meters: ["Main Meter"],
    });
  });

  it("has a curve over targets that follows the meter as well", async () => {
    const office = estimatedOffice();
    await bringMeter(office);
    const { points } = await readTargetCurve(office.ctx, office.buildingId);
    expect(points.every((each) => each.tier === 3)).toBe(true);
    const at = (targetC: number) => points.find((each) => each.targetC === targetC)?.p50 ?? Number.NaN;
    expect(at(24)).toBeGreaterThan(at(23));
  });
});

describe("kept costs", () => {
  it("are behind when readings of the meter, what it is mapped as, or bills have changed", async () => {
    const office = estimatedOffice();
    await bringMeter(office);
    const analyst = {
      bringUpToDate: async () => {},
      standing: () => ({ progress: null, failure: null }),
      memory: new ResultMemory(),
    };
    const ctx = { ...office.ctx, analyst };
    const { buildingId } = office;
    const work = async () => {
      for (const [kind, part] of [
        [COST, null],
        [FIGURE_WORKING, "setpoint"],
        [TARGET_CURVE, null],
      ] as const)
        await workOutJob(office.ctx, { buildingId, kind: kind.name, part }, kind);
    };
    const changed = async () => {
      const [cost, working, curve] = [
        await readKept(ctx, buildingId, COST),
        await readKept(ctx, buildingId, FIGURE_WORKING, "setpoint"),
        await readKept(ctx, buildingId, TARGET_CURVE),
      ].map((each) => each.behind?.changed ?? []);
      expect(working).toEqual(cost);
      expect(curve).toEqual(cost);
      return cost;
    };
    await work();
    expect(await changed()).toEqual([]);

    const meter = listPoints(ctx.db, buildingId).find((each) => each.kind === "meter-power");
    const reading = {
      series: meter?.id ?? 0,
      ts: Float64Array.of(Date.UTC(2025, 6, 1, 18) / 1000),
      v: Int32Array.of(99_000),
      decimals: 3,
    };
    await ctx.trends.write([reading], 2);
    expect(await changed()).toEqual(["trends"]);
    await work();
    expect(await changed()).toEqual([]);

    importTable(ctx, buildingId, "bills", { name: "bills.csv", bytes: bytesOf(["month,energy_kWh", "2025-01,30000"]) });
    expect(await changed()).toEqual(["bills"]);
  });
});
