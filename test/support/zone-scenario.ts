import { zoneTable } from "@/lib/time/zone-table";
import { diagnoseZone, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import type { ReportEvidence, ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { zoneExposure } from "@/lib/trends/exposure";
import { localWeekHours } from "@/lib/trends/local-week-hours";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneStates } from "@/lib/trends/state";
import type { ZoneGrids } from "@/lib/trends/zone-grids";
import { zoneStatistics } from "@/lib/trends/zone-statistics";
import { type Instant, makeZoneGrids } from "./zone-grids";

export const LIMITS = { minimumAirflowM3ps: 0.1, designAirflowM3ps: 0.4 };
export const INTERVALS_A_WEEK = 672;

type Now = { i: number; hour: number; weekday: number; week: number };

/** Six weeks of a zone that is occupied 08-18 h on weekdays; `at` says what differs from a zone held at 23.2 °C by cooling. */
export function scenarioGrids(
  at: (now: Now) => Partial<Record<keyof Instant, number | undefined>>,
  weeks = 6,
): ZoneGrids {
  return makeZoneGrids(weeks * INTERVALS_A_WEEK, (now) => {
    const occupied = now.weekday <= 5 && now.hour >= 8 && now.hour < 18;
    const usual = {
      zoneAirTempC: occupied ? 23.3 : 24.5,
      coolingSetpointC: occupied ? 23.2 : 27,
      heatingSetpointC: occupied ? 20 : 17,
      airflowM3ps: occupied ? 0.25 : 0,
      damperPct: occupied ? 60 : 0,
      reheatValvePct: 0,
      dischargeAirTempC: occupied ? 13.4 : 24,
      supplyAirTempC: 13,
      outdoorAirTempC: 26,
    };
    const changes = occupied ? at({ ...now, week: Math.floor(now.i / INTERVALS_A_WEEK) }) : {};
    return { ...usual, ...changes, occupied } as Instant;
  });
}

/** A report with the given vote; zone air as recorded then. */
export const report = (
  desk: string | null,
  thermalSensation: number,
  zoneAirTempC: number | null = null,
): ReportEvidence => ({
  desk,
  thermalSensation,
  preference: thermalSensation < 0 ? "warmer" : thermalSensation > 0 ? "cooler" : "no-change",
  zoneAirTempC,
  inCoolingSeason: true,
});

/** All that a diagnosis rests on, from grids; `coolingStage` are the samples of a single-zone unit's compressor. */
export function scenarioEvidence(
  grids: ZoneGrids,
  more: Partial<ZoneEvidence> = {},
  coolingStage?: PointSeries,
): ZoneEvidence {
  const limits = more.limits ?? LIMITS;
  const states = zoneStates(grids, limits);
  const shared = { zoneId: 7, grids, states, targetZoneAirTempC: 23, seasonThresholdC: 13 };
  return {
    zoneCode: "2-14",
    exposure: zoneExposure({ ...shared, occupiedSource: "schedule" }),
    statistics: zoneStatistics({
      ...shared,
      limits,
      weekHours: localWeekHours(grids.grid, zoneTable("UTC")),
      coolingStage,
    }),
    reports: [],
    deskCount: 6,
    reportYears: 6 / 52,
    neighbours: { zones: 8, medianCoolingSetbackK: 3.8, stepDownsUtcSeconds: [] },
    offset: null,
    limits,
    minimumAirflowOrigin: "entered",
    heaterCount: 0,
    heaterHoursPerYear: 0,
    heaterJumps: null,
    singleZone: grids.coolingStage !== null,
    airHandler: null,
    ...more,
  };
}

export const diagnoseScenario = (
  at: (now: Now) => Partial<Record<keyof Instant, number | undefined>>,
  more: Partial<ZoneEvidence> = {},
): ZoneDiagnosis => diagnoseZone(scenarioEvidence(scenarioGrids(at), more));
