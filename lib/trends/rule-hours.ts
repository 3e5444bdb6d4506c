import { coolingSeasonMask } from "./cooling-season";
import { stepHours } from "./grid";
import { medianInPlace } from "./median-in-place";
import {
  ABOVE_COMMAND_FACTOR,
  type AirflowLimits,
  AT_MINIMUM_FACTOR,
  DAMPER_MINIMUM_PCT,
  LEAK_DIFFERENCE_K,
  NEAR_SETPOINT_K,
  VALVE_CLOSED_PCT,
  VALVE_OPEN_PCT,
  type ZoneStates,
} from "./state";
import { COOLING, REHEAT } from "./state-code";
import type { ZoneGrids } from "./zone-grids";

/** A sign must last this long before it counts as a fault (reference D2: 30 min before alarming). */
const PERSISTENCE_SECONDS = 1800;
/** Reheat and cooling within this of each other are an alternation (reference D7, row 12). */
const ALTERNATION_SECONDS = 3600;
const VALVE_FULL_PCT = 95;
/** Airflow from this share of design on counts as all the box can give. Judgement, no source. */
const AT_DESIGN_FRACTION = 0.95;
/** "Cold" is zone air this far below the target, "hot" this far above the cooling setpoint [K] (reference D7). */
const FAR_K = 1;
/** Local hours that count as early in reference D7, row 3. */
const EARLY_UNTIL_HOUR = 10;

/**
 * Hours for which the signals of reference D7 held together, over the occupied cooling-season hours with zone air.
 * A rule whose trends are missing has 0 h; which trends exist stands in the exposure.
 */
export type RuleHours = {
  observed: number;
  /** Zone air at least 1 K below the target. */
  cold: number;
  /** Zone air more than 1 K above the cooling setpoint. */
  aboveSetpoint: number;
  /** Row 13: within 0.5 K of the cooling setpoint, airflow above minimum, valve closed. */
  heldByCoolingSetpoint: number;
  /** Row 8: between the heating setpoint and 0.5 K under the cooling setpoint, airflow at minimum, valve closed, damper (where trended) at minimum. */
  driftAtMinimum: number;
  /** Row 7: within 0.5 K of the heating setpoint, valve open, airflow at minimum. */
  reheatAtMinimum: number;
  /** Row 4: damper at minimum with over 1.5 of the minimum airflow, for at least 30 min. */
  airflowAboveCommand: number;
  /** Row 5: warm discharge air at a valve shut for at least 30 min; and the hours in which that could be seen. */
  leaking: number;
  valveShutWithDischarge: number;
  meanLeakDifferenceK: number | null;
  /** Row 6: valve at 95 % or more, no heat in the discharge air, zone over 0.5 K below the heating setpoint; and hours of full valve. */
  reheatWithoutHeat: number;
  valveFull: number;
  /** Row 15: at or above the cooling setpoint (less 0.5 K) with the airflow at design. */
  designAirflowAtSetpoint: number;
  /** Row 15 by the trend alone: airflow at design and zone air over 0.5 K above both the cooling setpoint and the target. */
  designAirflowTooWarm: number;
  /** Row 12: changes between cooling and reheat within an hour, and the median gap of the setpoints. */
  alternations: number;
  medianDeadbandK: number | null;
  /** Row 3: degree-hours below the target before 10:00 local and in all. */
  earlyOvercoolingKh: number;
  overcoolingKh: number;
};

/** Counts the hours of each rule in one pass. `weekHours` is `localWeekHours` of the grid. */
export function ruleHours(input: {
  grids: ZoneGrids;
  states: ZoneStates;
  limits: AirflowLimits;
  weekHours: Uint8Array;
  targetZoneAirTempC: number;
  seasonThresholdC: number;
  damperMinimumPct?: number;
}): RuleHours {
  const { grids, states, limits } = input;
  const season = coolingSeasonMask(grids, input.seasonThresholdC);
  const step = grids.grid.stepSeconds;
  const persistence = Math.max(1, Math.ceil(PERSISTENCE_SECONDS / step));
  const alternationReach = Math.floor(ALTERNATION_SECONDS / step);
  const minimum = limits.minimumAirflowM3ps ?? Number.NaN;
  const design = limits.designAirflowM3ps ?? Number.NaN;
  const damperMinimumPct = input.damperMinimumPct ?? DAMPER_MINIMUM_PCT;
  const read = (values: Float64Array | null, i: number): number => (values ? (values[i] as number) : Number.NaN);

  const n = { ...ZERO };
  const deadbands = new Float64Array(grids.grid.count);
  let deadbandCount = 0;
  let leakSum = 0;
  let shutRun = 0;
  let aboveRun = 0;
  let lastActive = { code: -1, i: Number.NEGATIVE_INFINITY };

  for (let i = 0; i < grids.grid.count; i++) {
    const valve = read(grids.reheatValvePct, i);
    shutRun = valve <= VALVE_CLOSED_PCT ? shutRun + 1 : 0;
    if (season[i] !== 1) {
      aboveRun = 0;
      continue;
    }
    n.observed++;
    const zoneAir = grids.zoneAirTempC[i] as number;
    const csp = read(grids.coolingSetpointC, i);
    const hsp = read(grids.heatingSetpointC, i);
    const airflow = read(grids.airflowM3ps, i);
    const damper = read(grids.damperPct, i);
    const discharge = read(grids.dischargeAirTempC, i) - read(grids.supplyAirTempC, i);
    const shut = valve <= VALVE_CLOSED_PCT;
    const atMinimum = airflow <= AT_MINIMUM_FACTOR * minimum;

    const belowK = input.targetZoneAirTempC - zoneAir;
    if (belowK >= FAR_K) n.cold++;
    if (belowK > 0) {
      n.overcoolingKh += belowK;
      if ((input.weekHours[i] as number) % 24 < EARLY_UNTIL_HOUR) n.earlyOvercoolingKh += belowK;
    }
    if (zoneAir > csp + FAR_K) n.aboveSetpoint++;
    if (Math.abs(zoneAir - csp) <= NEAR_SETPOINT_K && airflow > AT_MINIMUM_FACTOR * minimum && shut)
      n.heldByCoolingSetpoint++;
    // Row 8 asks for 1 K above the heating setpoint to stay clear of row 7; the shut valve does that here.
    if (shut && atMinimum && zoneAir < csp - NEAR_SETPOINT_K && !(zoneAir < hsp) && !(damper > damperMinimumPct))
      n.driftAtMinimum++;
    if (valve > VALVE_OPEN_PCT && atMinimum && Math.abs(zoneAir - hsp) <= NEAR_SETPOINT_K) n.reheatAtMinimum++;
    const atDesign = airflow >= AT_DESIGN_FRACTION * design;
    if (atDesign && zoneAir >= csp - NEAR_SETPOINT_K) n.designAirflowAtSetpoint++;
    // A setpoint far below the target that cannot be held does not make a zone hot.
    if (atDesign && zoneAir > Math.max(csp, input.targetZoneAirTempC) + NEAR_SETPOINT_K) n.designAirflowTooWarm++;

    aboveRun =
      damper <= damperMinimumPct && airflow > ABOVE_COMMAND_FACTOR * minimum && zoneAir < csp ? aboveRun + 1 : 0;
    if (aboveRun === persistence) n.airflowAboveCommand += persistence;
    else if (aboveRun > persistence) n.airflowAboveCommand++;

    if (shutRun > persistence && !Number.isNaN(discharge)) {
      n.valveShutWithDischarge++;
      if (states.leakingReheatValve[i] === 1) {
        n.leaking++;
        leakSum += discharge;
      }
    }
    if (valve >= VALVE_FULL_PCT) {
      n.valveFull++;
      if (zoneAir < hsp - NEAR_SETPOINT_K && discharge < LEAK_DIFFERENCE_K) n.reheatWithoutHeat++;
    }
    if (!Number.isNaN(csp - hsp)) deadbands[deadbandCount++] = csp - hsp;
    const code = states.codes[i] as number;
    if (code === COOLING || code === REHEAT) {
      if (lastActive.code >= 0 && lastActive.code !== code && i - lastActive.i <= alternationReach) n.alternations++;
      lastActive = { code, i };
    }
  }

  const hoursEach = stepHours(grids.grid);
  const hours = Object.fromEntries(Object.entries(n).map(([key, count]) => [key, count * hoursEach])) as typeof n;
  return {
    ...hours,
    alternations: n.alternations,
    meanLeakDifferenceK: n.leaking > 0 ? leakSum / n.leaking : null,
    medianDeadbandK: deadbandCount > 0 ? medianInPlace(deadbands.subarray(0, deadbandCount)) : null,
  };
}

const ZERO = {
  observed: 0,
  cold: 0,
  aboveSetpoint: 0,
  heldByCoolingSetpoint: 0,
  driftAtMinimum: 0,
  reheatAtMinimum: 0,
  airflowAboveCommand: 0,
  leaking: 0,
  valveShutWithDischarge: 0,
  reheatWithoutHeat: 0,
  valveFull: 0,
  designAirflowAtSetpoint: 0,
  designAirflowTooWarm: 0,
  alternations: 0,
  earlyOvercoolingKh: 0,
  overcoolingKh: 0,
};
