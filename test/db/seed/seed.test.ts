import { eq } from "drizzle-orm";
import { beforeEach, expect, it } from "vitest";
import { openAppDatabase } from "@/db/client";
import { building } from "@/db/schema/building";
import { comfortLink, comfortReport } from "@/db/schema/comfort";
import { device, deviceSetting } from "@/db/schema/device";
import { importRun, point } from "@/db/schema/trend-import";
import { weatherYear } from "@/db/schema/weather";
import { desk, zone } from "@/db/schema/zone";
import { DEMO_YEAR, demoSpan } from "@/db/seed/demo-calendar";
import { type DemoScope, seedDemoBuilding } from "@/db/seed/seed";
import { ZONE_PLANS } from "@/db/seed/zone-plan";
import { openTrendStore } from "@/db/trends/store";
import type { TrendStore } from "@/lib/trends/trend-store";

const scope: DemoScope = { span: demoSpan("2026-07-06", "2026-07-20"), zoneCodes: ["1-05", "2-04", "3-06"] };
const stores = () => ({ db: openAppDatabase(":memory:"), trends: openTrendStore(":memory:") });
let empty: ReturnType<typeof stores>;
beforeEach(() => {
  empty = stores();
});

it("writes zones, desks, devices, links, points and a finished import run for a small scope", async () => {
  const { db } = empty;
  const result = await seedDemoBuilding({ ...empty, scope });
  expect(db.select().from(zone).all().length).toBe(3);
  expect(db.select().from(desk).all().length).toBe(result.desks);
  expect(db.select().from(device).all().length).toBe(result.devices);
  // Outdoor air, supply air and meter; seven a zone, less the airflow of 2-04.
  expect(db.select().from(point).all().length).toBe(3 + 3 * 7 - 1);
  const run = db.select().from(importRun).where(eq(importRun.kind, "trends")).get();
  expect(run).toMatchObject({ state: "done", rowsInFile: result.samples, samplesAdded: result.samples });
  expect(run?.sha256).toBe(result.checksum);
  const points = db.select().from(point).all();
  const extents = await empty.trends.extent(points.map(({ id }) => id));
  expect(extents.reduce((sum, each) => sum + (each?.count ?? 0), 0)).toBe(result.samples);
});

it("gives the same rows and samples every time", async () => {
  const other = stores();
  const first = await seedDemoBuilding({ ...empty, scope });
  const second = await seedDemoBuilding({ ...other, scope });
  expect(second).toEqual(first);
  for (const table of [building, zone, desk, device, deviceSetting, comfortLink, comfortReport, weatherYear, importRun])
    expect(other.db.select().from(table).all()).toEqual(empty.db.select().from(table).all());
});

it("refuses a database that holds a building, and leaves it as it was", async () => {
  await seedDemoBuilding({ ...empty, scope });
  await expect(seedDemoBuilding({ ...empty, scope })).rejects.toThrow("holds a building already");
  expect(empty.db.select().from(building).all().length).toBe(1);
  expect(empty.db.select().from(zone).all().length).toBe(3);
});

it("leaves the database empty when it is stopped before the end, and makes the same demo afterwards", async () => {
  const whole = await seedDemoBuilding({ ...stores(), scope });
  const stopped: TrendStore = {
    ...empty.trends,
    async write(slices, run) {
      await empty.trends.write(slices, run);
      throw new Error("stopped");
    },
  };
  await expect(seedDemoBuilding({ db: empty.db, trends: stopped, scope })).rejects.toThrow("stopped");
  expect(empty.db.select().from(building).all()).toEqual([]);
  expect(await seedDemoBuilding({ ...empty, scope })).toEqual(whole);
  const run = empty.db.select().from(importRun).where(eq(importRun.kind, "trends")).get();
  expect(run).toMatchObject({ state: "done", samplesAdded: 0, samplesSame: whole.samples });
});

it("builds the whole demo with the sizes and the reports that were planned", async () => {
  const { db } = empty;
  // The samples are counted and dropped: what the store does with them is tested with the store.
  let samples = 0;
  const trends: TrendStore = {
    ...empty.trends,
    async write(slices) {
      for await (const { ts } of slices) samples += ts.length;
      return { added: samples, changed: 0, same: 0, repeated: { same: 0, changed: 0 }, chunksWritten: 0 };
    },
  };
  const result = await seedDemoBuilding({ db, trends });
  expect(result.zones).toBe(36);
  expect(
    new Set(
      db
        .select()
        .from(zone)
        .all()
        .map(({ floor }) => floor),
    ).size,
  ).toBe(3);
  expect(result.desks).toBeGreaterThanOrEqual(150);
  expect(result.reports).toBeGreaterThan(250);
  expect(result.reports).toBeLessThan(600);
  expect(samples).toBeGreaterThan(170 * 0.98 * DEMO_YEAR.count);
  expect(DEMO_YEAR.count).toBe(365 * 96);

  const codeOf = new Map(
    db
      .select()
      .from(zone)
      .all()
      .map(({ id, code }) => [id, code]),
  );
  const causeOf = new Map(ZONE_PLANS.map(({ code, cause }) => [code, cause]));
  const reports = db.select().from(comfortReport).all();
  const causeOfReport = ({ zoneId }: { zoneId: number }) => causeOf.get(codeOf.get(zoneId) ?? "");
  const perZone = (cause: string, sign: number) =>
    reports.filter((report) => causeOfReport(report) === cause && Math.sign(report.thermalSensation) === sign).length /
    ZONE_PLANS.filter((plan) => plan.cause === cause).length;
  for (const cold of ["setpoint-too-low", "minimum-airflow-too-high", "biased-sensor", "override-left-in"])
    expect(perZone(cold, -1), cold).toBeGreaterThan(2 * perZone("healthy", -1));
  expect(perZone("too-little-airflow", 1)).toBeGreaterThan(2 * perZone("healthy", 1));

  const deskOf = new Map(
    db
      .select()
      .from(desk)
      .all()
      .map(({ id, code }) => [id, code]),
  );
  const draughts = reports.filter((report) => report.draught && causeOfReport(report) === "cold-desk");
  expect(draughts.length).toBeGreaterThan(5);
  expect(draughts.filter(({ deskId }) => deskOf.get(deskId ?? 0)?.endsWith("D3")).length).toBeGreaterThan(
    0.7 * draughts.length,
  );
});
