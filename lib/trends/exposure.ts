import type { Finding } from "@/lib/findings/finding";
import { quantileOfSorted } from "@/lib/statistics/quantile";
import { coolingSeasonMask } from "./cooling-season";
import { exposureFindings } from "./exposure-findings";
import { stepHours } from "./grid";
import type { OccupiedSource } from "./occupied";
import { BIN_WIDTH_K, binLowC } from "./outdoor-bins";
import type { ZoneStates } from "./state";
import { TargetTally } from "./target-tally";
import type { OutdoorBin, StateExposure, ZoneExposure } from "./zone-exposure";
import type { ZoneGrids } from "./zone-grids";
import { OCCUPIED_STATES, type OccupiedState } from "./zone-state";

/**
 * A zone's occupied time by state and its degree-hours below the target zone air temperature, with the quality of
 * the record. Degree-hours are the sum of max(0, target - zone air) · dt over occupied cooling-season intervals,
 * without a tolerance (reference Q8, Q9). `seasonThresholdC` is the supply air temperature (13 °C by default in the
 * product). `findings` of earlier steps (grids, minimum airflow) are carried along.
 */
export function zoneExposure(input: {
  zoneId: number;
  grids: ZoneGrids;
  states: ZoneStates;
  targetZoneAirTempC: number;
  seasonThresholdC: number;
  occupiedSource: OccupiedSource;
  findings?: readonly Finding[];
}): ZoneExposure {
  const { grids, targetZoneAirTempC } = input;
  const { grid, occupied, zoneAirTempC } = grids;
  const hoursEach = stepHours(grid);
  const season = coolingSeasonMask(grids, input.seasonThresholdC);
  const tally = OCCUPIED_STATES.map(() => newTally());
  const bins = new Map<number, Float64Array>();
  const targets = new TargetTally();
  let first = -1;
  let last = -1;
  let recorded = 0;
  let occupiedWithout = 0;
  let seasonUnknown = 0;

  for (let i = 0; i < grid.count; i++) {
    const zoneAir = zoneAirTempC[i] as number;
    if (Number.isNaN(zoneAir)) continue;
    if (first < 0) first = i;
    last = i;
    recorded++;
    if (occupied[i] === 1 && grids.outdoorAirTempC && Number.isNaN(grids.outdoorAirTempC[i] as number)) seasonUnknown++;
    if (season[i] !== 1) continue;
    const code = input.states.codes[i] as number;
    const each = tally[code];
    if (!each) continue;
    const belowKh = Math.max(0, targetZoneAirTempC - zoneAir) * hoursEach;
    each.hours += hoursEach;
    each.overcoolingKh += belowKh;
    if (zoneAir < targetZoneAirTempC) each.hoursBelowTarget += hoursEach;
    each.zoneAir.add(zoneAir);
    if (grids.coolingSetpointC) each.coolingSetpoint.add(grids.coolingSetpointC[i] as number);
    if (grids.heatingSetpointC) each.heatingSetpoint.add(grids.heatingSetpointC[i] as number);
    if (grids.airflowM3ps) each.airflow.add(grids.airflowM3ps[i] as number);
    if (!grids.outdoorAirTempC) {
      targets.add(code, zoneAir, null, hoursEach);
      continue;
    }
    const outdoor = grids.outdoorAirTempC[i] as number;
    each.outdoor.add(outdoor);
    const low = binLowC(outdoor);
    targets.add(code, zoneAir, low, hoursEach);
    let bin = bins.get(low);
    if (!bin) {
      bin = new Float64Array(2 * OCCUPIED_STATES.length);
      bins.set(low, bin);
    }
    bin[2 * code] = (bin[2 * code] as number) + hoursEach;
    bin[2 * code + 1] = (bin[2 * code + 1] as number) + belowKh;
  }

  const occupiedAir = zoneAirTempC.filter((each, i) => occupied[i] === 1 && !Number.isNaN(each)).sort();
  for (let i = Math.max(0, first); i <= last; i++) {
    if (occupied[i] === 1 && Number.isNaN(zoneAirTempC[i] as number)) occupiedWithout++;
  }
  const byState = perState((k) => (tally[k] as Tally).result());
  const exposure: ZoneExposure = {
    zoneId: input.zoneId,
    fromUtcSeconds: grid.startUtcSeconds + Math.max(0, first) * grid.stepSeconds,
    toUtcSeconds: grid.startUtcSeconds + (last + 1) * grid.stepSeconds,
    stepSeconds: grid.stepSeconds,
    targetZoneAirTempC,
    occupiedHours: occupiedAir.length * hoursEach,
    occupiedHoursWithoutData: occupiedWithout * hoursEach,
    coolingSeasonHours: OCCUPIED_STATES.reduce((sum, state) => sum + byState[state].hours, 0),
    byState,
    byOutdoorBin: grids.outdoorAirTempC ? outdoorBins(bins) : null,
    byTarget: targets.result(grids.outdoorAirTempC ? [...bins.keys()].sort((a, b) => a - b) : null),
    occupiedZoneAirTempC: spread(occupiedAir),
    hasTrend: {
      coolingSetpoint: hasValues(grids.coolingSetpointC),
      heatingSetpoint: hasValues(grids.heatingSetpointC),
      airflow: hasValues(grids.airflowM3ps),
      reheatValve: hasValues(grids.reheatValvePct),
      dischargeAir: hasValues(grids.dischargeAirTempC),
      damper: hasValues(grids.damperPct),
      occupancy: input.occupiedSource !== "schedule",
      coolingStage: hasValues(grids.coolingStage),
    },
    findings: [...(input.findings ?? [])],
  };
  exposure.findings.push(
    ...exposureFindings(exposure, {
      recordedHours: recorded * hoursEach,
      seasonUnknownHours: seasonUnknown * hoursEach,
      grids,
    }),
  );
  return exposure;
}

const hasValues = (values: Float64Array | null): boolean => values?.some((each) => !Number.isNaN(each)) ?? false;

function perState<T>(make: (code: number) => T): Record<OccupiedState, T> {
  return Object.fromEntries(OCCUPIED_STATES.map((state, code) => [state, make(code)])) as Record<OccupiedState, T>;
}

function outdoorBins(bins: ReadonlyMap<number, Float64Array>): OutdoorBin[] {
  return [...bins]
    .sort(([a], [b]) => a - b)
    .map(([lowC, sums]) => ({
      lowC,
      highC: lowC + BIN_WIDTH_K,
      byState: perState((k) => ({ hours: sums[2 * k] as number, overcoolingKh: sums[2 * k + 1] as number })),
    }));
}

function spread(ascending: Float64Array): ZoneExposure["occupiedZoneAirTempC"] {
  if (ascending.length === 0) return null;
  let sum = 0;
  for (const each of ascending) sum += each;
  return {
    mean: sum / ascending.length,
    p5: quantileOfSorted(ascending, 0.05),
    p50: quantileOfSorted(ascending, 0.5),
    p95: quantileOfSorted(ascending, 0.95),
  };
}

/** A mean that skips what was not recorded. */
class RunningMean {
  private sum = 0;
  private count = 0;
  add(value: number): void {
    if (Number.isNaN(value)) return;
    this.sum += value;
    this.count++;
  }
  mean(): number | null {
    return this.count > 0 ? this.sum / this.count : null;
  }
}

type Tally = ReturnType<typeof newTally>;

function newTally() {
  return {
    hours: 0,
    overcoolingKh: 0,
    hoursBelowTarget: 0,
    zoneAir: new RunningMean(),
    coolingSetpoint: new RunningMean(),
    heatingSetpoint: new RunningMean(),
    airflow: new RunningMean(),
    outdoor: new RunningMean(),
    result(): StateExposure {
      return {
        hours: this.hours,
        overcoolingKh: this.overcoolingKh,
        hoursBelowTarget: this.hoursBelowTarget,
        meanZoneAirTempC: this.zoneAir.mean(),
        meanCoolingSetpointC: this.coolingSetpoint.mean(),
        meanHeatingSetpointC: this.heatingSetpoint.mean(),
        meanAirflowM3ps: this.airflow.mean(),
        meanOutdoorAirTempC: this.outdoor.mean(),
      };
    },
  };
}
