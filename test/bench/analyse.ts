import { occupiedMask } from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import { estimateMinimumAirflow } from "@/lib/trends/estimate-minimum-airflow";
import { zoneExposure } from "@/lib/trends/exposure";
import { gridOver } from "@/lib/trends/grid";
import { groupOffsets } from "@/lib/trends/group-offsets";
import { heaterJumps } from "@/lib/trends/heater-jumps";
import { localWeekHours } from "@/lib/trends/local-week-hours";
import type { PointKind } from "@/lib/trends/point-kind";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneStates } from "@/lib/trends/state";
import { zoneGrids } from "@/lib/trends/zone-grids";
import { zoneStatistics } from "@/lib/trends/zone-statistics";
import { medianMs, report } from "./stopwatch";

const START = 1_704_067_200;
const COUNT = 35_000;
const ZONES = 36;

const series = (value: (hour: number) => number): PointSeries => ({
  sampling: "interval",
  samples: {
    ts: Float64Array.from({ length: COUNT }, (_, i) => START + i * 900),
    v: Int32Array.from({ length: COUNT }, (_, i) => Math.round(value((i / 4) % 24) * 1000 + (i % 7))),
    decimals: 3,
  },
});

const POINTS: Partial<Record<PointKind, PointSeries>> = {
  "zone-air-temp": series((hour) => 22 + Math.sin(hour)),
  "cooling-setpoint": series((hour) => (hour > 8 && hour < 18 ? 22.5 : 26)),
  "heating-setpoint": series((hour) => (hour > 8 && hour < 18 ? 20 : 16)),
  airflow: series((hour) => (hour > 8 && hour < 18 ? 0.1 + 0.1 * Math.abs(Math.sin(hour)) : 0)),
  "airflow-setpoint": series((hour) => (hour > 8 && hour < 18 ? 0.1 + 0.1 * Math.abs(Math.sin(hour)) : 0)),
  "damper-position": series((hour) => 40 + 20 * Math.sin(hour)),
  "reheat-valve": series((hour) => (hour < 10 ? 20 : 0)),
  "discharge-air-temp": series(() => 14),
};

/** From samples to states, exposure and statistics for a building's year, against a bare pass over as many samples. */
export async function benchAnalyse(): Promise<void> {
  const samples = ZONES * COUNT * Object.keys(POINTS).length;
  const bareMs = await medianMs(5, () => barePass());
  const analyseMs = await medianMs(5, () => analyseBuilding());
  report("bare pass over the same samples", bareMs, `${(samples / 1e6).toFixed(1)} M samples`);
  report(
    `${ZONES} zones, a year of eight points each`,
    analyseMs,
    `${(analyseMs / bareMs).toFixed(1)} of the bare pass`,
  );
}

function barePass(): number {
  let sum = 0;
  for (let zone = 0; zone < ZONES; zone++)
    for (const point of Object.values(POINTS)) for (const value of point.samples.v) sum += value;
  return sum;
}

function analyseBuilding(): void {
  const grid = gridOver({ fromUtcSeconds: START, toUtcSeconds: START + COUNT * 900 });
  const clock = zoneTable("America/New_York");
  const hours = { startMinute: 480, endMinute: 1080 };
  const scheduleMask = occupiedMask(
    grid,
    { weekdays: { 1: [hours], 2: [hours], 3: [hours], 4: [hours], 5: [hours] }, holidays: [] },
    clock,
  );
  const weekHours = localWeekHours(grid, clock);
  const outdoorAirTempC = new Float64Array(COUNT).map((_, i) => 18 + 8 * Math.sin(i / 96));
  const building = {
    grid,
    scheduleMask,
    outdoorAirTempC,
    supplyAirTempC: new Float64Array(COUNT).fill(13),
    relativeHumidityPct: null,
  };
  const zones = Array.from({ length: ZONES }, (_, zoneId) => {
    const { grids, occupiedSource } = zoneGrids(building, POINTS);
    const minimum = estimateMinimumAirflow(grids);
    const limits = {
      minimumAirflowM3ps: minimum.status === "ok" ? minimum.minimumAirflowM3ps : null,
      designAirflowM3ps: 0.4,
    };
    const shared = { zoneId, grids, targetZoneAirTempC: 23, seasonThresholdC: 13 };
    const states = zoneStates(grids, limits);
    zoneExposure({ ...shared, states, occupiedSource });
    zoneStatistics({ ...shared, states, limits, weekHours });
    const season = coolingSeasonMask(grids, 13);
    const place = { zoneId, floor: String(zoneId % 3) };
    return { ...place, grids, season, heaterPowerW: null, minimumAirflowM3ps: limits.minimumAirflowM3ps };
  });
  groupOffsets(zones);
  heaterJumps(zones, weekHours);
}
