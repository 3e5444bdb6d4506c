import { coolingCalls, IN_CYCLE } from "./cooling-calls";
import { COOLING, DEADBAND, FAULT, NO_DATA, REHEAT, UNDETERMINED, UNOCCUPIED } from "./state-code";
import type { ZoneGrids } from "./zone-grids";

/** Airflow limits of a terminal box [m³/s]; null where nobody knows. */
export type AirflowLimits = { minimumAirflowM3ps: number | null; designAirflowM3ps: number | null };

/** A valve counts as open above this [%] (reference D2). */
export const VALVE_OPEN_PCT = 5;
/** Controllers show a closed valve as 0; half a percent leaves room for the averaging of a closing one. */
export const VALVE_CLOSED_PCT = 0.5;
/** Airflow up to this many times the minimum counts as at minimum (reference D2). */
export const AT_MINIMUM_FACTOR = 1.1;
/** Airflow above this many times the minimum at a damper commanded to minimum is a fault (reference D2). */
export const ABOVE_COMMAND_FACTOR = 1.5;
/** A damper at or below this [%] counts as commanded to minimum, unless the box's own figure was learned (reference D2 check). */
export const DAMPER_MINIMUM_PCT = 35;
/** Within this of a setpoint [K] a zone counts as held by it (reference D7, rows 7 and 13). */
export const NEAR_SETPOINT_K = 0.5;
/** Discharge above supply air by more than this [K] at a closed valve is a leak; the same at an open one is heat (reference D7). */
export const LEAK_DIFFERENCE_K = 3;

export type ZoneStates = {
  /** One state code an interval: see state-code.ts. */
  codes: Uint8Array;
  /** 1 where the reheat valve is shut and the discharge air is warm all the same, in occupied intervals. */
  leakingReheatValve: Uint8Array;
};

/** Reads a trend that may not exist; NaN is "not recorded". */
const at = (values: Float64Array | null, i: number): number => (values ? (values[i] as number) : Number.NaN);

/**
 * State of every interval of a zone by the first rule that fits (reference D2): valve above 5 % is reheat; airflow up
 * to 1.10 of the minimum is deadband; a damper at minimum with more than 1.5 of the minimum and zone air below the
 * cooling setpoint is a fault; anything else is cooling.
 *
 * Cooling is never assumed. Without the airflow, or without a minimum to hold it against, only reheat can be told.
 * Without the valve, an interval at minimum airflow may be deadband or reheat, and one above it may be heating at
 * raised airflow: it is cooling only when the zone air is also within 0.5 K of the cooling setpoint or above it.
 * Without the cooling setpoint, a damper at minimum with high airflow may or may not be a fault. Without the damper, much air in
 * a zone over 0.5 K below its cooling setpoint may be a fault as well. All these are `undetermined`.
 *
 * A unit that serves the zone alone shows its cooling stage instead: in a cycle of it the zone is cooling, else it is in the
 * deadband with nothing running (see `coolingCalls`).
 */
export function zoneStates(
  grids: ZoneGrids,
  limits: AirflowLimits,
  options: { damperMinimumPct?: number } = {},
): ZoneStates {
  const { count } = grids.grid;
  const minimum = limits.minimumAirflowM3ps ?? Number.NaN;
  const damperMinimumPct = options.damperMinimumPct ?? DAMPER_MINIMUM_PCT;
  const calls = grids.coolingStage ? coolingCalls(grids.grid, grids.coolingStage) : null;
  const codes = new Uint8Array(count);
  const leakingReheatValve = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    if (grids.occupied[i] !== 1) {
      codes[i] = UNOCCUPIED;
      continue;
    }
    const zoneAir = grids.zoneAirTempC[i] as number;
    const valve = at(grids.reheatValvePct, i);
    const airflow = at(grids.airflowM3ps, i);
    codes[i] = Number.isNaN(zoneAir)
      ? NO_DATA
      : calls
        ? singleZoneState(valve, calls[i] as number)
        : occupiedState({
            zoneAir,
            valve,
            airflow,
            minimum,
            coolingSetpoint: at(grids.coolingSetpointC, i),
            damper: at(grids.damperPct, i),
            damperMinimumPct,
          });
    // Air must move past the sensor: at standstill the discharge sensor only shows the ceiling void (reference D7, row 5).
    const moving = airflow > 0 && !(airflow < 0.5 * minimum);
    const warm = at(grids.dischargeAirTempC, i) - at(grids.supplyAirTempC, i) > LEAK_DIFFERENCE_K;
    if (valve <= VALVE_CLOSED_PCT && moving && warm) leakingReheatValve[i] = 1;
  }
  return { codes, leakingReheatValve };
}

/** The rules for one occupied interval of a unit that serves the zone alone. */
function singleZoneState(valve: number, call: number): number {
  if (valve > VALVE_OPEN_PCT) return REHEAT;
  if (Number.isNaN(call)) return UNDETERMINED;
  return call === IN_CYCLE ? COOLING : DEADBAND;
}

/** The rules for one occupied interval with zone air. Comparisons with NaN are false, so a missing trend meets no rule. */
function occupiedState(now: {
  zoneAir: number;
  valve: number;
  airflow: number;
  minimum: number;
  coolingSetpoint: number;
  damper: number;
  damperMinimumPct: number;
}): number {
  if (now.valve > VALVE_OPEN_PCT) return REHEAT;
  if (Number.isNaN(now.airflow) || Number.isNaN(now.minimum)) return UNDETERMINED;
  const valveKnown = !Number.isNaN(now.valve);
  if (now.airflow <= AT_MINIMUM_FACTOR * now.minimum) return valveKnown ? DEADBAND : UNDETERMINED;
  if (now.airflow > ABOVE_COMMAND_FACTOR * now.minimum) {
    if (now.damper <= now.damperMinimumPct) {
      if (!valveKnown || Number.isNaN(now.coolingSetpoint)) return UNDETERMINED;
      if (now.zoneAir < now.coolingSetpoint) return FAULT;
    }
    if (Number.isNaN(now.damper) && now.zoneAir < now.coolingSetpoint - NEAR_SETPOINT_K) return UNDETERMINED;
  }
  if (!valveKnown && !(now.zoneAir >= now.coolingSetpoint - NEAR_SETPOINT_K)) return UNDETERMINED;
  return COOLING;
}
