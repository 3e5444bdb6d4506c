import { AIR_HEAT_JPM3K, type ZoneModel } from "./zone-model";
import { NIGHT_COOLING_SETPOINT_C } from "./zone-setpoints";

/** Proportional-integral loop with an output of 0 to 1 that does not wind up. */
type Loop = { integral: number };

const GAIN_PER_K = 0.4;
const INTEGRAL_SECONDS = 1800;
/** Fan, duct and box warm the supply air by this on its way to the zone. */
export const DUCT_GAIN_K = 0.5;
/** Warmest air that the box may blow (common practice, no source). */
const WARMEST_DISCHARGE_C = 35;

function runLoop(loop: Loop, errorK: number, seconds: number): number {
  const wished = GAIN_PER_K * errorK + loop.integral + (GAIN_PER_K * errorK * seconds) / INTEGRAL_SECONDS;
  loop.integral = Math.min(1, Math.max(0, loop.integral + (GAIN_PER_K * errorK * seconds) / INTEGRAL_SECONDS));
  return Math.min(1, Math.max(0, wished));
}

export type BoxState = { cooling: Loop; heating: Loop };
export const boxAtRest = (): BoxState => ({ cooling: { integral: 0 }, heating: { integral: 0 } });

export type BoxOutput = { airflowM3ps: number; valveFraction: number; dischargeAirTempC: number };

/**
 * One step of a VAV box with reheat: airflow between minimum and design on the cooling loop; valve on the heating
 * loop, with airflow raised to the heating maximum in its upper half. Outside the hours of the air handler the box is
 * shut, unless the zone leaves the night setpoints: then it cools, or heats with room air.
 */
export function runBox(
  state: BoxState,
  model: ZoneModel,
  now: {
    sensedAirC: number;
    coolingSetpointC: number;
    heatingSetpointC: number;
    supplyAirTempC: number;
    systemOn: boolean;
    seconds: number;
  },
): BoxOutput {
  const { minimumAirflowM3ps: low, designAirflowM3ps: high, heatingAirflowM3ps: warm } = model;
  const coolAboveC = now.systemOn ? now.coolingSetpointC : NIGHT_COOLING_SETPOINT_C;
  const heating = runLoop(state.heating, now.heatingSetpointC - now.sensedAirC, now.seconds);
  const cooling = runLoop(state.cooling, now.sensedAirC - coolAboveC, now.seconds);
  if (!now.systemOn && heating === 0) {
    const airflowM3ps = cooling * high;
    const dischargeAirTempC = cooling > 0 ? now.supplyAirTempC + DUCT_GAIN_K : now.sensedAirC;
    return { airflowM3ps, valveFraction: 0, dischargeAirTempC };
  }
  const airflowM3ps = now.systemOn ? low + cooling * (high - low) + Math.max(0, 2 * heating - 1) * (warm - low) : warm;
  const inletC = now.systemOn ? now.supplyAirTempC + DUCT_GAIN_K : now.sensedAirC;
  const warmedC = inletC + (heating * model.reheatCapacityW) / (AIR_HEAT_JPM3K * airflowM3ps);
  return {
    airflowM3ps,
    valveFraction: heating,
    dischargeAirTempC: Math.max(inletC, Math.min(warmedC, WARMEST_DISCHARGE_C)),
  };
}
