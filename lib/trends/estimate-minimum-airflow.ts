import type { Finding } from "@/lib/findings/finding";
import { quantileOfSorted } from "@/lib/statistics/quantile";
import { stepHours } from "./grid";
import { NEAR_SETPOINT_K, VALVE_OPEN_PCT } from "./state";
import type { ZoneGrids } from "./zone-grids";

/** Occupied hours in the deadband below which the minimum cannot be read off them. Judgement, no source. */
const LEAST_DEADBAND_HOURS = 5;
/** Airflow below this share of the record's high end is a stopped fan, not a minimum. Judgement, no source. */
const FAN_ON_FRACTION = 0.02;
/** A low level counts as a minimum on its own only when the airflow is at times this many times as high. Judgement. */
const VARIES_FACTOR = 1.5;
/** Run-up of fan and box at the start of an occupied stretch. Judgement, no source. */
const RUN_UP_SECONDS = 3600;
const HISTOGRAM_BINS = 50;

export type MinimumAirflow =
  | {
      status: "ok";
      minimumAirflowM3ps: number;
      /** Read from the setpoint that the controller gave, or estimated from the measured airflow. */
      origin: "airflow-setpoint-trend" | "estimated";
      finding: Finding;
    }
  | { status: "not-estimable"; finding: Finding };

/**
 * Minimum airflow of a box [m³/s] from its occupied trends, for a zone whose record does not state it: the commonest
 * level of the airflow setpoint (or, without one, of the measured airflow) in occupied intervals with the valve
 * closed and the zone air more than 0.5 K below the cooling setpoint, where a box stands at its minimum. Without
 * five such hours: the 5th percentile of occupied airflow, and only if the 95th is half as high again; an airflow
 * that never moves may as well be the maximum. The first hour of each occupied stretch is left out: fans run up then. Always marked with a finding: an estimate is not a commissioned value.
 */
export function estimateMinimumAirflow(grids: ZoneGrids): MinimumAirflow {
  const fromSetpoint = grids.airflowSetpointM3ps ? lowLevel(grids, grids.airflowSetpointM3ps) : null;
  const found = fromSetpoint ?? (grids.airflowM3ps ? lowLevel(grids, grids.airflowM3ps) : null);
  if (!found) {
    return {
      status: "not-estimable",
      finding: { code: "minimum-airflow-unknown", severity: "caution", evidence: { trends: trendsRead(grids) } },
    };
  }
  const origin = fromSetpoint ? "airflow-setpoint-trend" : "estimated";
  return {
    status: "ok",
    minimumAirflowM3ps: found.level,
    origin,
    finding: {
      code: "minimum-airflow-estimated",
      severity: "note",
      evidence: { minimumAirflowM3ps: found.level, origin, basis: found.basis, hours: found.hours },
    },
  };
}

const trendsRead = (grids: ZoneGrids): string[] => [
  ...(grids.airflowM3ps ? ["airflow"] : []),
  ...(grids.airflowSetpointM3ps ? ["airflow-setpoint"] : []),
];

function lowLevel(
  grids: ZoneGrids,
  airflow: Float64Array,
): { level: number; basis: "deadband-hours" | "low-percentile"; hours: number } | null {
  const settled = settledMask(grids);
  const occupied = ascendingWhere(airflow, (i) => settled[i] === 1);
  if (occupied.length === 0) return null;
  const high = quantileOfSorted(occupied, 0.95);
  const fanOn = FAN_ON_FRACTION * high;
  const hoursEach = stepHours(grids.grid);

  const deadband = ascendingWhere(airflow, (i) => {
    if (settled[i] !== 1 || !((airflow[i] as number) > fanOn)) return false;
    const valve = grids.reheatValvePct ? (grids.reheatValvePct[i] as number) : 0;
    const setpoint = grids.coolingSetpointC ? (grids.coolingSetpointC[i] as number) : Number.NaN;
    return !(valve > VALVE_OPEN_PCT) && (grids.zoneAirTempC[i] as number) < setpoint - NEAR_SETPOINT_K;
  });
  if (deadband.length * hoursEach >= LEAST_DEADBAND_HOURS) {
    return { level: commonestLevel(deadband), basis: "deadband-hours", hours: deadband.length * hoursEach };
  }
  const running = occupied.filter((each) => each > fanOn);
  if (running.length * hoursEach < LEAST_DEADBAND_HOURS) return null;
  const level = quantileOfSorted(running, 0.05);
  return high > VARIES_FACTOR * level ? { level, basis: "low-percentile", hours: running.length * hoursEach } : null;
}

/** Occupied intervals without the first hour of each stretch. */
function settledMask(grids: ZoneGrids): Uint8Array {
  const wait = RUN_UP_SECONDS / grids.grid.stepSeconds;
  let since = 0;
  return grids.occupied.map((occupied) => {
    since = occupied === 1 ? since + 1 : 0;
    return since > wait ? 1 : 0;
  });
}

function ascendingWhere(values: Float64Array, holds: (i: number) => boolean): Float64Array {
  const found = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (!Number.isNaN(value) && holds(i)) found[count++] = value;
  }
  return found.subarray(0, count).sort();
}

/** Median of the values in the fullest of 50 equal bins and its two neighbours, so that a level on an edge is not split. */
function commonestLevel(ascending: Float64Array): number {
  const width = (quantileOfSorted(ascending, 0.98) || 1) / HISTOGRAM_BINS;
  const counts = new Map<number, number>();
  for (const each of ascending) {
    const bin = Math.floor(each / width);
    counts.set(bin, (counts.get(bin) ?? 0) + 1);
  }
  let fullest = 0;
  let most = -1;
  for (const bin of counts.keys()) {
    const around = (counts.get(bin - 1) ?? 0) + (counts.get(bin) ?? 0) + (counts.get(bin + 1) ?? 0);
    if (around > most) {
      most = around;
      fullest = bin;
    }
  }
  const near = ascending.filter((each) => Math.abs(Math.floor(each / width) - fullest) <= 1);
  return quantileOfSorted(near, 0.5);
}
