import { describe, expect, it } from "vitest";
import { airLines, sideLines, sidesLede } from "@/app/buildings/[buildingId]/comfort-reports/both-sides/view-model";
import { expectedOfSeason } from "@/lib/comfort-reports/both-sides/season-record";
import { ALL_YEAR } from "@/lib/proposals/acting-window";
import { livePicture } from "@/lib/proposals/live/live-picture";
import { bothSides, coolingSeasonOf, readBothSides } from "@/lib/services/both-sides/expect";
import { sharesByAir, sideWorkings } from "@/lib/services/both-sides/workings";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
import { liveBuilding, liveZone, stateAt } from "@/test/factories/live-building";
import { smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";

const NOON = Date.UTC(2025, 5, 10, 12, 7);
const COLD = { origin: "phone", zoneCode: "", thermalSensation: -2, preference: "warmer" } as const;

async function officeWithReports() {
  const office = smallOffice();
  await bringTrends(office);
  const { ctx, buildingId } = office;
  const later = { ...ctx, now: NOON + 40 * 86_400_000 };
  for (const minutes of [0, 5, 10])
    logComfortReport(later, buildingId, { ...COLD, deskCode: "2-14-01", reportedAtMs: NOON + minutes * 60_000 });
  logComfortReport(later, buildingId, { ...COLD, zoneCode: "2-14", reportedAtMs: NOON - 3000 * 86_400_000 });
  return { ...office, ctx: later };
}

describe("both sides of a building", () => {
  it("hold person-days of desks against occupied desk-hours since the first report, and say what is left out", async () => {
    const { ctx, buildingId, zoneId } = await officeWithReports();
    const { sides, isOfTooFew, kept } = await readBothSides(ctx, buildingId);
    // All of them are one person's.
    expect([sides, isOfTooFew]).toEqual([null, true]);
    const record = kept.result;
    expect(record).toMatchObject({ personDays: 1, leftOut: 1, without: ["2-15"] });
    expect(record?.counts).toEqual([{ zoneId, season: "summer", airTempC: 22, tooCold: 1, tooWarm: 0 }]);
    const hours = (list: [number, number][] = []) => list.reduce((sum, [, each]) => sum + each, 0);
    const zone = record?.zones[0];
    expect(hours(zone?.sinceReports.summer)).toBeLessThan(hours(zone?.lastYear.summer));
    expect(hours(zone?.sinceReports.summer)).toBeGreaterThan(0);
  });

  it("give the expectation for a shift of some zones alone, and the same of all as the page", async () => {
    const { ctx, buildingId, zoneId } = await officeWithReports();
    const { kept } = await readBothSides(ctx, buildingId);
    const sides = kept.result && bothSides(kept.result);
    if (!sides) throw new Error("the office has hours of the cooling season");
    const season = coolingSeasonOf(sides.record);
    const up = expectedOfSeason(season, (id) => (id === zoneId ? { riseK: 1, share: 1 } : null));
    expect(up).toEqual(sides.steps.find(({ shiftK }) => shiftK === 1)?.expected);
    const workings = sideWorkings(sides);
    for (const [i, { expected, warmer, cooler }] of sides.steps.entries()) {
      const own = workings[i];
      expect(own?.["too-cold"].result.value).toBe(expected.tooCold.median);
      expect(own?.["too-warm"].result.value).toBe(expected.tooWarm.median);
      // Its terms, weighed, give the figure: the working is of this model and these hours.
      const logs = own?.["too-warm"].terms ?? [];
      const sum = logs.reduce(
        (total, term, k) => (k % 2 ? total + (logs[k - 1]?.value ?? 0) * Math.log(term.value) : total),
        0,
      );
      expect(Math.exp(sum)).toBeCloseTo(expected.tooWarm.median, 9);
      expect(own?.["want-warmer"].result.value).toBeCloseTo(100 * warmer.median, 9);
      expect(own?.["want-cooler"].result.value).toBeCloseTo(100 * cooler.median, 9);
    }
    const points = sharesByAir(sides);
    expect(points.map(({ airTempC }) => airTempC)).toEqual([20, 21, 22, 23, 24, 25, 26, 27]);
    expect(points.reduce((sum, { deskHours }) => sum + deskHours, 0)).toBe(sides.deskHours);
    expect(sidesLede(sides, "C")).toMatch(/K warmer .* too cold go from .* and those of too warm from/);
    expect(sideLines(sides, "C").map(({ shift }) => shift)).toContain("as it is");
    // The mean of the zone's hours lies among the whole degrees that its desk-hours are counted in.
    const [air] = airLines(sides, "C");
    const bins = sides.record.zones[0]?.lastYear.summer.map(([airTempC]) => airTempC) ?? [];
    expect(air?.zone).toBe("2-14");
    expect(Number.parseFloat(air?.mean ?? "")).toBeGreaterThanOrEqual(Math.min(...bins) - 0.5);
    expect(Number.parseFloat(air?.mean ?? "")).toBeLessThanOrEqual(Math.max(...bins) + 0.5);
  });

  it("are the numbers of a proposal that moves the air as far", async () => {
    const { ctx, buildingId, zoneId } = await officeWithReports();
    const { kept } = await readBothSides(ctx, buildingId);
    const sides = kept.result && bothSides(kept.result);
    if (!sides) throw new Error("the office has hours of the cooling season");
    const still = { deadband: stateAt(0, 23), reheat: stateAt(0, 23), other: stateAt(0, 23) };
    const zone = liveZone({ zoneId, states: { cooling: stateAt(1000, 22), ...still } });
    const building = liveBuilding([zone], { reports: coolingSeasonOf(sides.record) });
    for (const { shiftK, expected } of sides.steps.filter((step) => step.shiftK > 0)) {
      const levers = [{ zoneId, lever: "cooling-setpoint" as const, amount: shiftK }];
      const { cold, hot } = livePicture(building, levers, ALL_YEAR);
      expect(cold?.after).toBeCloseTo(expected.tooCold.median, 9);
      expect(hot?.after).toBeCloseTo(expected.tooWarm.median, 9);
      expect([cold?.low, cold?.high]).toEqual([expected.tooCold.countLow, expected.tooCold.countHigh]);
      expect([hot?.low, hot?.high]).toEqual([expected.tooWarm.countLow, expected.tooWarm.countHigh]);
      expect(cold?.before).toBeCloseTo(sides.steps.find((step) => step.shiftK === 0)?.expected.tooCold.median ?? 0, 9);
    }
  });

  it("say nothing without hours of the cooling season", () => {
    const record = {
      zones: [],
      counts: [],
      without: ["1"],
      personDays: 0,
      people: 0,
      peopleByZone: [],
      leftOut: 0,
      fromUtcSeconds: 0,
      yearDays: 0,
    };
    expect(bothSides(record)).toBeNull();
    expect(sidesLede(null, "C")).toMatch(/both are shown/);
  });
});
