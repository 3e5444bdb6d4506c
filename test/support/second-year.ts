import { buildingPowerKw } from "@/db/seed/building-power";
import { type DemoCalendar, demoCalendar, demoSpan, STEP_SECONDS, startOfLocalDate } from "@/db/seed/demo-calendar";
import { readDemoWeather } from "@/db/seed/demo-weather";
import { type DevicePlan, devicePlans } from "@/db/seed/device-plan";
import { drawReports } from "@/db/seed/draw-reports";
import type { RecordedTrend } from "@/db/seed/record-trend";
import { type SimulatedZone, simulatePlan } from "@/db/seed/simulate-plan";
import { surroundings } from "@/db/seed/surroundings";
import { ZONE_PLANS, type ZonePlan } from "@/db/seed/zone-plan";
import { buildingTrends, zoneTrends } from "@/db/seed/zone-trends";

/** Zones of the demo whose setpoint is too low and is raised in the second year, and a sound one that nobody touches. */
export const CHANGED_ZONES = ["1-05", "1-06", "2-12", "3-05"];
export const UNTOUCHED_ZONE = "2-05";

/** The year in the database, and the second one up to where its export ends: both are over by now. */
export const FIRST_YEAR = demoSpan("2024-10-01", "2025-10-01");
const BOTH_YEARS = demoSpan("2024-10-01", "2026-08-01");
export const CHANGED_ON = "2026-05-04";
export const RAISE_K = 2;
const EXPORT_FROM = "2026-04-13";
/** The cooling season before, and this one up to the end of the export. */
export const WINDOWS = { before: ["2025-05-05", "2025-09-30"], after: ["2026-05-05", "2026-07-31"] } as const;

/** What a second export of the building's control system has in it: less than the first, as much as a proof needs. */
const EXPORTED = ["outdoor-air-temp", "meter-power", "zone-air-temp", "cooling-setpoint", "airflow"];
const UNITS: Record<string, { unit: string; perStored: number }> = {
  degC: { unit: "°C", perStored: 1 },
  kW: { unit: "kW", perStored: 1 },
  litrePerSecond: { unit: "L/s", perStored: 1000 },
};

/** The zones of both years and their devices, all of them found before the first year ends. */
export function proofBuilding(): { plans: ZonePlan[]; devices: DevicePlan[] } {
  const codes = [...CHANGED_ZONES, UNTOUCHED_ZONE];
  return {
    plans: ZONE_PLANS.filter(({ code }) => codes.includes(code)),
    devices: devicePlans()
      .filter(({ zoneCode, retiredOn }) => codes.includes(zoneCode) && retiredOn === null)
      .map((each) => ({ ...each, foundOn: yearBefore(each.foundOn) })),
  };
}

const yearBefore = (date: string): string => `${Number(date.slice(0, 4)) - 1}${date.slice(4)}`;

export type SecondYear = {
  /** A long table: instant with its offset, point, value, unit. */
  trends: string;
  /** A table of complaints: date, time, desk, text. */
  complaints: string;
  /** What the change did in the simulation: zone air of the changed zones and electricity, mean of the occupied days after. */
  planted: { riseK: number; kwhPerDay: number };
};

/** The second year with the change in force, and its effect against the same year without it. */
export function secondYear(): SecondYear {
  const { plans, devices } = proofBuilding();
  const calendar = demoCalendar(BOTH_YEARS);
  const around = surroundings(readDemoWeather(), calendar);
  const override = { fromUtcSeconds: startOfLocalDate(CHANGED_ON), dropK: -RAISE_K };
  const run = (isChanged: boolean): SimulatedZone[] =>
    plans.map((plan) => {
      const programme =
        isChanged && CHANGED_ZONES.includes(plan.code) ? { ...plan.programme, override } : plan.programme;
      return simulatePlan({ ...plan, programme }, devices, calendar, around);
    });
  const [asItWas, changed] = [run(false), run(true)];
  const powerKw = buildingPowerKw(changed, calendar, around);
  const trends = [
    ...buildingTrends(calendar, around, powerKw),
    ...changed.flatMap((zone) => zoneTrends(zone, calendar)),
  ].filter(({ kind }) => EXPORTED.includes(kind));
  const airC = (zones: readonly SimulatedZone[]): number =>
    meanAfter(calendar, (i) => {
      const touched = zones.filter(({ plan }) => CHANGED_ZONES.includes(plan.code));
      return touched.reduce((sum, { run }) => sum + (run.sensedAirTempC[i] as number), 0) / touched.length;
    });
  const wholeDayKw = (power: Float64Array): number => meanAfter(calendar, (i) => power[i] as number, "whole days");
  const saved = wholeDayKw(buildingPowerKw(asItWas, calendar, around)) - wholeDayKw(powerKw);
  return {
    trends: longTable(trends),
    complaints: complaintTable(changed, calendar),
    planted: { riseK: airC(changed) - airC(asItWas), kwhPerDay: 24 * saved },
  };
}

/** Mean over the occupied steps of the window after, or over all steps of its occupied days. */
function meanAfter(calendar: DemoCalendar, valueAt: (i: number) => number, of = "occupied hours"): number {
  const [from, to] = WINDOWS.after.map((date) => startOfLocalDate(date)) as [number, number];
  const at = (i: number): number => calendar.span.startUtcSeconds + i * STEP_SECONDS;
  const steps = Array.from({ length: calendar.span.count }, (_, i) => i).filter(
    (i) => at(i) >= from && at(i) < to + 86_400,
  );
  const days = new Set(steps.filter((i) => calendar.occupied[i] === 1).map((i) => calendar.day[i]));
  const counted = steps.filter((i) => (of === "whole days" ? days.has(calendar.day[i]) : calendar.occupied[i] === 1));
  return counted.reduce((sum, i) => sum + valueAt(i), 0) / counted.length;
}

function longTable(trends: readonly RecordedTrend[]): string {
  const from = startOfLocalDate(EXPORT_FROM);
  const rows = trends.flatMap(({ externalName, fileUnit, ts, v, decimals }) => {
    const { unit, perStored } = UNITS[fileUnit] as (typeof UNITS)[string];
    return Array.from(ts, (at, i): [at: number, text: string] => {
      const value = Number((((v[i] as number) * perStored) / 10 ** decimals).toFixed(3));
      return [at, `${localStamp(at)},${externalName},${value},${unit}`];
    }).filter(([at]) => at >= from);
  });
  rows.sort(([a], [b]) => a - b);
  return ["Timestamp,Point,Value,Unit", ...rows.map(([, text]) => text), ""].join("\n");
}

/** Local daylight time with its offset: the export lies within one summer. */
const localStamp = (utcSeconds: number): string =>
  `${new Date((utcSeconds - 4 * 3600) * 1000).toISOString().slice(0, 19)}-04:00`;

function complaintTable(zones: readonly SimulatedZone[], calendar: DemoCalendar): string {
  const from = startOfLocalDate(EXPORT_FROM);
  const rows = zones.flatMap((zone) =>
    drawReports(zone, new Set(), calendar).flatMap(({ desk, atUtcSeconds, thermalSensation, preference }) => {
      const isCold = thermalSensation < 0 && preference === "warmer";
      const isHot = thermalSensation > 0 && preference === "cooler";
      if (atUtcSeconds < from || !(isCold || isHot)) return [];
      const local = localStamp(atUtcSeconds);
      const text = isCold ? "too cold at my desk" : "too hot at my desk";
      return [`${local.slice(0, 10)},${local.slice(11, 16)},${zone.desks[desk]?.code},${text}`];
    }),
  );
  return ["date,time,desk,complaint", ...rows.toSorted(), ""].join("\n");
}
