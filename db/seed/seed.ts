import type { TrendStore } from "@/lib/trends/trend-store";
import { type AppDatabase, type AppTransaction, inTransaction } from "../client";
import { building } from "../schema/building";
import { buildingPowerKw } from "./building-power";
import { DEMO_YEAR, type DemoCalendar, type DemoSpan, demoCalendar, STEP_SECONDS } from "./demo-calendar";
import { readDemoWeather } from "./demo-weather";
import { type DevicePlan, devicePlans } from "./device-plan";
import { deviceSettings } from "./device-settings";
import { drawReports } from "./draw-reports";
import type { RecordedTrend } from "./record-trend";
import { type SimulatedZone, simulatePlan } from "./simulate-plan";
import { type Surroundings, surroundings } from "./surroundings";
import { usualHours } from "./usual-hours";
import { writeDemoCircuits } from "./write-demo-circuits";
import { writeDemoPlugLog } from "./write-demo-plug-log";
import { closeOldReports, writeBuilding, writeDevice, writeLinks, writeReport, writeZone } from "./write-demo-rows";
import { storeTrends, writePoints } from "./write-trends";
import { writeWeather } from "./write-weather";
import { ZONE_PLANS, type ZonePlan } from "./zone-plan";
import { buildingTrends, zoneTrends } from "./zone-trends";

/** What the demo is made of: all of it, or a few zones and days. */
export type DemoScope = { span: DemoSpan; zoneCodes: readonly string[] };

export type SeedResult = {
  buildingId: number;
  zones: number;
  desks: number;
  devices: number;
  reports: number;
  points: number;
  samples: number;
  /** SHA-256 over all samples in the order written: the same on every machine. */
  checksum: string;
};

/** Noon of the day after the demo year. */
export const DEMO_NOW_MS = 1000 * (DEMO_YEAR.startUtcSeconds + DEMO_YEAR.count * STEP_SECONDS + 12 * 3600);

const WHOLE: DemoScope = { span: DEMO_YEAR, zoneCodes: ZONE_PLANS.map(({ code }) => code) };

/**
 * Builds the invented demo building: its trends, then all rows in one transaction. The same call gives the same rows and
 * samples on every machine. Refuses a database that holds a building. `now` is the time of making [epoch ms].
 */
export async function seedDemoBuilding(input: {
  db: AppDatabase;
  trends: TrendStore;
  now?: number;
  scope?: DemoScope;
  /** Other zones and devices than the demo's, for tests; the scope's zone codes then do not count. */
  made?: { plans: readonly ZonePlan[]; devices: readonly DevicePlan[] };
}): Promise<SeedResult> {
  const { db, trends, now = DEMO_NOW_MS, scope = WHOLE } = input;
  if (db.select({ id: building.id }).from(building).limit(1).get())
    throw new Error("This database holds a building already. The demo building is made in an empty data folder only.");

  const calendar = demoCalendar(scope.span);
  const weather = readDemoWeather();
  const around = surroundings(weather, calendar);
  const devices = input.made?.devices ?? devicePlans().filter(({ zoneCode }) => scope.zoneCodes.includes(zoneCode));
  const plans = input.made?.plans ?? ZONE_PLANS.filter(({ code }) => scope.zoneCodes.includes(code));
  const zones = plans.map((plan) => simulatePlan(plan, devices, calendar, around));

  // Trends first: if the program is stopped, the database is still empty and the same call makes the same demo.
  const stored = await storeTrends(trends, recordAll(zones, calendar, around));
  const { buildingId, reports } = inTransaction(db, (tx) => {
    const buildingId = writeBuilding(tx, now);
    const zoneIds = new Map<string, number>();
    let reports = 0;
    for (const zone of zones) {
      const own = devices.filter(({ zoneCode }) => zoneCode === zone.plan.code);
      const written = writeZoneRows(tx, { buildingId, zone, devices: own, calendar });
      zoneIds.set(zone.plan.code, written.zoneId);
      reports += written.reports;
    }
    closeOldReports(tx, buildingId);
    if (!input.made) {
      writeDemoCircuits(tx, buildingId, zoneIds);
      writeDemoPlugLog(tx, buildingId);
    }
    writePoints(tx, { buildingId, zoneIds, now }, stored);
    writeWeather(tx, { buildingId, weather, now });
    return { buildingId, reports };
  });
  return {
    buildingId,
    zones: zones.length,
    desks: plans.reduce((sum, { deskCount }) => sum + deskCount, 0),
    devices: devices.length,
    reports,
    points: stored.points.length,
    samples: stored.samples,
    checksum: stored.checksum,
  };
}

/** A zone with everything that stands in it or came out of it. */
function writeZoneRows(
  tx: AppTransaction,
  made: { buildingId: number; zone: SimulatedZone; devices: readonly DevicePlan[]; calendar: DemoCalendar },
): { zoneId: number; reports: number } {
  const { buildingId, zone, devices, calendar } = made;
  const { code: zoneCode } = zone.plan;
  const ids = writeZone(tx, buildingId, zone);
  for (const plan of devices) {
    const place = { buildingId, zoneId: ids.zoneId, deskId: ids.deskIds[plan.desk] ?? null };
    writeDevice(tx, place, plan, deviceSettings(plan, usualHours(plan, zone)));
  }
  const createdAtMs = 1000 * calendar.span.startUtcSeconds;
  const desksWithDevice = new Set(devices.map(({ desk }) => desk));
  const links = writeLinks(tx, { buildingId, zoneCode, createdAtMs }, ids, desksWithDevice);
  const fans = devices.filter(({ deviceClass }) => deviceClass.kind === "personal-fan");
  const reports = drawReports(zone, new Set(fans.map(({ desk }) => desk)), calendar);
  reports.forEach((report, index) => {
    writeReport(tx, { buildingId, ids, links, submissionId: `demo-${zoneCode}-${index + 1}` }, report);
  });
  return { zoneId: ids.zoneId, reports: reports.length };
}

function* recordAll(
  zones: readonly SimulatedZone[],
  calendar: DemoCalendar,
  around: Surroundings,
): Generator<RecordedTrend> {
  yield* buildingTrends(calendar, around, buildingPowerKw(zones, calendar, around));
  for (const zone of zones) yield* zoneTrends(zone, calendar);
}
