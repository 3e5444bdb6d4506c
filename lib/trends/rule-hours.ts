import { coolingSeasonMask } from "./cooling-season";
import { stepHours } from "./grid";
import { medianInPlace } from "./median-in-place";
import { type SeenSpan, SignTally } from "./seen-span";
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
import { COOLING, DEADBAND, REHEAT } from "./state-code";
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

/** Signs of reference D7 that are counted in hours. */
const SIGNS = [
  /** Zone air at least 1 K below the target. */
  "cold",
  /** Zone air more than 1 K above the cooling setpoint. */
  "aboveSetpoint",
  /** Row 13: within 0.5 K of the cooling setpoint, airflow above minimum, valve closed; of a single-zone unit: within 1 K, in a cycle. */
  "heldByCoolingSetpoint",
  /** Row 8: between the heating setpoint and 0.5 K under the cooling setpoint, airflow and damper at minimum, valve closed. */
  "driftAtMinimum",
  /** Row 7: within 0.5 K of the heating setpoint, valve open, airflow at minimum. */
  "reheatAtMinimum",
  /** Row 4: no reheat, damper at minimum with over 1.5 of the minimum airflow, for at least 30 min. */
  "airflowAboveCommand",
  /** Row 5: warm discharge air at a valve shut for at least 30 min; and the hours in which that could be seen. */
  "leaking",
  "valveShutWithDischarge",
  /** Row 6: valve at 95 % or more, no heat in the discharge air, zone over 0.5 K below the heating setpoint; and hours of full valve. */
  "reheatWithoutHeat",
  "valveFull",
  /** Row 15: at or above the cooling setpoint (less 0.5 K) with the airflow at design. */
  "designAirflowAtSetpoint",
  /** Row 15 by the trend alone: airflow at design and zone air over 0.5 K above both the cooling setpoint and the target. */
  "designAirflowTooWarm",
  /** Row 16's counterpart: a single-zone unit idle for an hour and more, zone air 1 K and more below the target. */
  "coldWithoutCooling",
] as const;
export type RuleSign = (typeof SIGNS)[number];

/**
 * Hours for which the signals of reference D7 held together, over the occupied cooling-season hours with zone air.
 * A rule whose trends are missing has 0 h; which trends exist stands in the exposure.
 */
export type RuleHours = Record<RuleSign, number> & {
  observed: number;
  meanLeakDifferenceK: number | null;
  /** Row 12: changes between cooling and reheat within an hour, and the median gap of the setpoints. */
  alternations: number;
  medianDeadbandK: number | null;
  /** Row 3: degree-hours below the target before 10:00 local and in all. */
  earlyOvercoolingKh: number;
  overcoolingKh: number;
  /** When each sign was seen; none for a sign that never was. */
  seen: Partial<Record<RuleSign, SeenSpan>>;
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
  const { grids, states, limits, weekHours } = input;
  const { grid } = grids;
  const season = coolingSeasonMask(grids, input.seasonThresholdC);
  const persistence = Math.max(1, Math.ceil(PERSISTENCE_SECONDS / grid.stepSeconds));
  const alternationReach = Math.floor(ALTERNATION_SECONDS / grid.stepSeconds);
  const minimum = limits.minimumAirflowM3ps ?? Number.NaN;
  const design = limits.designAirflowM3ps ?? Number.NaN;
  const damperMinimumPct = input.damperMinimumPct ?? DAMPER_MINIMUM_PCT;
  const read = (values: Float64Array | null, i: number): number => (values ? (values[i] as number) : Number.NaN);

  const tallies = Object.fromEntries(SIGNS.map((sign) => [sign, new SignTally()])) as Record<RuleSign, SignTally>;
  const mark = (sign: RuleSign, i: number): void => tallies[sign].add(i, weekHours[i] as number);
  const deadbands = new Float64Array(grid.count);
  let observed = 0;
  let alternations = 0;
  let deadbandCount = 0;
  let overcoolingK = 0;
  let earlyOvercoolingK = 0;
  let leakSum = 0;
  let shutRun = 0;
  let aboveRun = 0;
  let lastActive = { code: -1, i: Number.NEGATIVE_INFINITY };

  for (let i = 0; i < grid.count; i++) {
    const valve = read(grids.reheatValvePct, i);
    shutRun = valve <= VALVE_CLOSED_PCT ? shutRun + 1 : 0;
    if (season[i] !== 1) {
      aboveRun = 0;
      continue;
    }
    observed++;
    const zoneAir = grids.zoneAirTempC[i] as number;
    const csp = read(grids.coolingSetpointC, i);
    const hsp = read(grids.heatingSetpointC, i);
    const airflow = read(grids.airflowM3ps, i);
    const damper = read(grids.damperPct, i);
    const discharge = read(grids.dischargeAirTempC, i) - read(grids.supplyAirTempC, i);
    const code = states.codes[i] as number;
    const shut = valve <= VALVE_CLOSED_PCT;
    const atMinimum = airflow <= AT_MINIMUM_FACTOR * minimum;

    const belowK = input.targetZoneAirTempC - zoneAir;
    if (belowK >= FAR_K) mark("cold", i);
    if (belowK > 0) {
      overcoolingK += belowK;
      if ((weekHours[i] as number) % 24 < EARLY_UNTIL_HOUR) earlyOvercoolingK += belowK;
    }
    if (zoneAir > csp + FAR_K) mark("aboveSetpoint", i);
    const offSetpointK = Math.abs(zoneAir - csp);
    if (grids.coolingStage) {
      if (code === COOLING && offSetpointK <= FAR_K) mark("heldByCoolingSetpoint", i);
      if (code === DEADBAND && belowK >= FAR_K) mark("coldWithoutCooling", i);
    } else if (offSetpointK <= NEAR_SETPOINT_K && airflow > AT_MINIMUM_FACTOR * minimum && shut)
      mark("heldByCoolingSetpoint", i);
    // Row 8 asks for 1 K above the heating setpoint to stay clear of row 7; the shut valve does that here.
    if (shut && atMinimum && zoneAir < csp - NEAR_SETPOINT_K && zoneAir >= hsp && damper <= damperMinimumPct)
      mark("driftAtMinimum", i);
    if (valve > VALVE_OPEN_PCT && atMinimum && Math.abs(zoneAir - hsp) <= NEAR_SETPOINT_K) mark("reheatAtMinimum", i);
    const atDesign = airflow >= AT_DESIGN_FRACTION * design;
    if (atDesign && zoneAir >= csp - NEAR_SETPOINT_K) mark("designAirflowAtSetpoint", i);
    // A setpoint far below the target that cannot be held does not make a zone hot.
    if (atDesign && zoneAir > Math.max(csp, input.targetZoneAirTempC) + NEAR_SETPOINT_K)
      mark("designAirflowTooWarm", i);

    // A box that reheats may be given more air on purpose (reference D2: the valve is looked at first).
    const isAbove =
      valve <= VALVE_OPEN_PCT &&
      damper <= damperMinimumPct &&
      airflow > ABOVE_COMMAND_FACTOR * minimum &&
      zoneAir < csp;
    aboveRun = isAbove ? aboveRun + 1 : 0;
    // A run counts from its beginning, once it has lasted long enough.
    if (aboveRun === persistence) for (let k = i - persistence + 1; k < i; k++) mark("airflowAboveCommand", k);
    if (aboveRun >= persistence) mark("airflowAboveCommand", i);

    if (shutRun > persistence && !Number.isNaN(discharge)) {
      mark("valveShutWithDischarge", i);
      if (states.leakingReheatValve[i] === 1) {
        mark("leaking", i);
        leakSum += discharge;
      }
    }
    if (valve >= VALVE_FULL_PCT) {
      mark("valveFull", i);
      if (zoneAir < hsp - NEAR_SETPOINT_K && discharge < LEAK_DIFFERENCE_K) mark("reheatWithoutHeat", i);
    }
    if (!Number.isNaN(csp - hsp)) deadbands[deadbandCount++] = csp - hsp;
    if (code === COOLING || code === REHEAT) {
      if (lastActive.code >= 0 && lastActive.code !== code && i - lastActive.i <= alternationReach) alternations++;
      lastActive = { code, i };
    }
  }

  const hoursEach = stepHours(grid);
  const inHours = SIGNS.map((sign) => [sign, tallies[sign].count * hoursEach]);
  const seen = SIGNS.flatMap((sign) => {
    const span = tallies[sign].span(grid);
    return span ? [[sign, span]] : [];
  });
  return {
    ...(Object.fromEntries(inHours) as Record<RuleSign, number>),
    observed: observed * hoursEach,
    overcoolingKh: overcoolingK * hoursEach,
    earlyOvercoolingKh: earlyOvercoolingK * hoursEach,
    alternations,
    meanLeakDifferenceK: tallies.leaking.count > 0 ? leakSum / tallies.leaking.count : null,
    medianDeadbandK: deadbandCount > 0 ? medianInPlace(deadbands.subarray(0, deadbandCount)) : null,
    seen: Object.fromEntries(seen) as RuleHours["seen"],
  };
}
