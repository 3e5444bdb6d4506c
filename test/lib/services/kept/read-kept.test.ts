import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { updateBuilding } from "@/db/queries/buildings";
import { openResultStore } from "@/db/results";
import type { Context } from "@/lib/services/context";
import type { AnalysisJob, Analyst } from "@/lib/services/kept/analyst";
import { findKind } from "@/lib/services/kept/kinds";
import { readKept, readKeptAll } from "@/lib/services/kept/read-kept";
import { ResultMemory } from "@/lib/services/kept/result-memory";
import { workOutJob } from "@/lib/services/kept/work-out";
import { COST, FIGURE_WORKING } from "@/lib/services/overcooling/shown";
import { zoneAnalysisSubject } from "@/lib/services/zone-analysis/read";
import { ZONE_DAYS } from "@/lib/services/zones/days";
import { addZone } from "@/lib/services/zones/save";
import { shownZones, ZONES } from "@/lib/services/zones/shown";
import type { GroupOffset } from "@/lib/trends/group-offsets";
import { smallOffice } from "@/test/factories/office";
import { bringTrends, bringWeather, bringZoneAir } from "@/test/factories/office-records";

/** An analyst who notes what is asked and works when told to. */
function lazyAnalyst(): Analyst & { asked: AnalysisJob[]; waits: number[]; work(ctx: Context): Promise<void> } {
  const asked: AnalysisJob[] = [];
  const waits: number[] = [];
  return {
    asked,
    waits,
    memory: new ResultMemory(),
    async bringUpToDate(job, _urgency, mostMs) {
      asked.push(job);
      waits.push(mostMs);
    },
    standing: () => ({ progress: null, failure: null }),
    async work(ctx) {
      for (const job of asked.splice(0)) {
        const kind = findKind(job.kind);
        if (!kind) throw new Error(job.kind);
        await workOutJob(ctx, job, kind);
      }
    },
  };
}

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "kept-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const later = (ctx: Context, minutes: number): Context => ({ ...ctx, now: ctx.now + minutes * 60_000 });

describe("a page's result", () => {
  it("is nothing at first, is asked for, and is of now once it is worked out", async () => {
    const office = smallOffice();
    await bringTrends(office);
    const analyst = lazyAnalyst();
    const ctx = { ...office.ctx, analyst };
    const first = await readKept(ctx, office.buildingId, ZONES);
    expect(first).toMatchObject({ result: null, workedOutAtMs: null, behind: { progress: null, failure: null } });
    expect(analyst.asked).toEqual([{ buildingId: office.buildingId, kind: "zones", part: null }]);
    await analyst.work(ctx);
    const next = await readKept(ctx, office.buildingId, ZONES);
    expect(next).toMatchObject({ workedOutAtMs: ctx.now, behind: null });
    expect(next.result?.zones.map((each) => each.zoneId)).toEqual([office.zoneId]);
    expect(analyst.asked).toEqual([]);
  });

  it("stays the last one, with its time and what has changed, until the next is worked out", async () => {
    const office = smallOffice();
    await bringTrends(office);
    bringWeather(office);
    const analyst = lazyAnalyst();
    const ctx = { ...office.ctx, analyst };
    await readKept(ctx, office.buildingId, COST);
    await analyst.work(ctx);
    const before = await readKept(ctx, office.buildingId, COST);
    updateBuilding(ctx.db, office.buildingId, { electricityPricePerKwh: 0.5 });
    const behind = await readKept(later(ctx, 5), office.buildingId, COST);
    expect(behind.result).toBe(before.result);
    expect(behind.workedOutAtMs).toBe(ctx.now);
    expect(behind.behind?.changed).toEqual(["building"]);
    await analyst.work(later(ctx, 6));
    const after = await readKept(later(ctx, 7), office.buildingId, COST);
    expect(after).toMatchObject({ workedOutAtMs: later(ctx, 6).now, behind: null });
    expect(JSON.stringify(after.result)).not.toBe(JSON.stringify(before.result));
  });

  it("is not waited for when only comfort reports have come in", async () => {
    const office = smallOffice();
    const analyst = lazyAnalyst();
    const ctx = { ...office.ctx, analyst };
    await readKeptAll(ctx, office.buildingId, [{ kind: ZONES }]);
    expect(analyst.waits.at(-1)).toBeGreaterThan(0);
    await analyst.work(ctx);
    ctx.db.$client
      .prepare(
        "insert into comfort_report (building_id, zone_id, reported_at_ms, thermal_sensation, preference) values (?, ?, ?, -2, 'warmer')",
      )
      .run(office.buildingId, office.zoneId, ctx.now);
    const kept = await readKept(ctx, office.buildingId, ZONES);
    expect(kept.behind?.changed).toEqual(["reports"]);
    expect(analyst.waits.at(-1)).toBe(0);
    // The report is counted at once; one person's is not shown by itself.
    expect(shownZones(ctx, office.buildingId, kept).reports.hidden).toEqual(new Set([office.zoneId]));
  });

  it("outlives the program: the last one is shown by the next, which finds that trends came in meanwhile", async () => {
    const office = smallOffice();
    await bringTrends(office);
    const file = path.join(folder, "results.db");
    const before = openResultStore(file);
    const kept = await readKept({ ...office.ctx, results: before }, office.buildingId, ZONES);
    before.close();
    await bringZoneAir(office, office.otherZoneId);
    const results = openResultStore(file);
    const analyst = lazyAnalyst();
    const shown = await readKept({ ...later(office.ctx, 60), results, analyst }, office.buildingId, ZONES);
    expect(JSON.stringify(shown.result)).toBe(JSON.stringify(kept.result));
    expect(shown).toMatchObject({ workedOutAtMs: office.ctx.now, behind: { changed: ["trends", "mapping"] } });
    results.close();
  });
});

describe("working a building out again", () => {
  it("works out the zone whose trends changed, and no other", async () => {
    const office = smallOffice();
    await bringTrends(office);
    await bringZoneAir(office, office.otherZoneId);
    const { ctx, buildingId, zoneId, otherZoneId } = office;
    const workedOutAt = (id: number) => ctx.results.stamp(buildingId, zoneAnalysisSubject(id))?.workedOutAtMs;
    await readKept(ctx, buildingId, ZONES);
    const next = later(ctx, 10);
    await bringZoneAir(office, otherZoneId, 24_000);
    const { result } = await readKept(next, buildingId, ZONES);
    expect([workedOutAt(zoneId), workedOutAt(otherZoneId)]).toEqual([ctx.now, next.now]);
    const mean = result?.zones.find((each) => each.zoneId === otherZoneId)?.analysis.exposure.occupiedZoneAirTempC
      ?.mean;
    expect(mean).toBeCloseTo(24, 6);
  });

  it("works out no zone for another price or a report, and all of them for another target", async () => {
    const office = smallOffice();
    await bringTrends(office);
    bringWeather(office);
    const { ctx, buildingId, zoneId } = office;
    const workedOutAt = () => ctx.results.stamp(buildingId, zoneAnalysisSubject(zoneId))?.workedOutAtMs;
    await readKept(ctx, buildingId, COST);
    updateBuilding(ctx.db, buildingId, { electricityPricePerKwh: 0.5 });
    const { workedOutAtMs } = await readKept(later(ctx, 1), buildingId, COST);
    expect([workedOutAtMs, workedOutAt()]).toEqual([later(ctx, 1).now, ctx.now]);
    updateBuilding(ctx.db, buildingId, { targetZoneAirTempC: 24 });
    await readKept(later(ctx, 2), buildingId, COST);
    expect(workedOutAt()).toBe(later(ctx, 2).now);
  });

  it("places a zone beside its neighbours as a first working out of all does", async () => {
    const fresh = smallOffice();
    const again = smallOffice();
    for (const office of [fresh, again]) {
      const zones = [1, 2, 3, 4].map((n) => addZone(office.ctx, office.buildingId, { code: `3-0${n}`, floor: "3" }));
      for (const [i, zoneId] of zones.entries()) {
        // The last one comes when the others were worked out before, if they were.
        if (i === 3 && office === again) await readKept(office.ctx, office.buildingId, ZONES);
        await bringZoneAir(office, zoneId, 21_000 + 300 * i);
      }
    }
    const [a, b] = [await readKept(fresh.ctx, 1, ZONES), await readKept(again.ctx, 1, ZONES)];
    expect(JSON.stringify(b.result)).toBe(JSON.stringify(a.result));
    const offsets = (office: typeof fresh) =>
      JSON.stringify(office.ctx.results.find(1, "zones-beside-each-other")?.result);
    expect(offsets(again)).toBe(offsets(fresh));
    const found = again.ctx.results.find(1, "zones-beside-each-other")?.result as
      | { offsets: GroupOffset[] }
      | undefined;
    expect(found?.offsets.at(-1)?.occupiedOffsetK).toBeCloseTo(0.6, 9);
  });

  it("keeps a figure's whole working and a zone's days by themselves", async () => {
    const office = smallOffice();
    await bringTrends(office);
    bringWeather(office);
    const { ctx, buildingId, zoneId } = office;
    const [cost, figure, days] = await readKeptAll(ctx, buildingId, [
      { kind: COST },
      { kind: FIGURE_WORKING, part: "total" },
      { kind: ZONE_DAYS, part: String(zoneId) },
    ]);
    const assessment = cost.result?.assessment;
    expect(assessment?.status === "ok" && figure.result?.working?.result.value).toBe(
      assessment?.status === "ok" && assessment.statedTotal,
    );
    expect((await readKept(ctx, buildingId, FIGURE_WORKING, "nothing")).result).toEqual({ working: null });
    expect(days.result?.length).toBeGreaterThan(27);
  });
});
