import type { BoxOutput } from "./box-controller";
import type { ZoneModel } from "./zone-model";

/** Width of the thermostat's differential about its setpoint [K]. Common practice, no source. */
const DIFFERENTIAL_K = 0.8;
/** How far the coil cools and the heater warms the room air that passes it [K]. Common practice, no source. */
const COIL_K = 11;
const HEATER_K = 12;

export type PackagedUnitState = { cooling: boolean; heating: boolean };
export const packagedUnitAtRest = (): PackagedUnitState => ({ cooling: false, heating: false });

/**
 * One step of a packaged unit that serves its zone alone: a compressor and an electric heater, each on or off by a thermostat
 * with a differential. Between their runs the fan only moves the room's own air. `valveFraction` is 1 while it heats.
 */
export function runPackagedUnit(
  state: PackagedUnitState,
  model: ZoneModel,
  now: { sensedAirC: number; coolingSetpointC: number; heatingSetpointC: number },
): BoxOutput {
  const half = DIFFERENTIAL_K / 2;
  if (now.sensedAirC > now.coolingSetpointC + half) state.cooling = true;
  if (now.sensedAirC < now.coolingSetpointC - half) state.cooling = false;
  if (now.sensedAirC < now.heatingSetpointC - half) state.heating = true;
  if (now.sensedAirC > now.heatingSetpointC + half) state.heating = false;
  const offsetK = state.cooling ? -COIL_K : state.heating ? HEATER_K : 0;
  return {
    airflowM3ps: offsetK === 0 ? 0 : model.designAirflowM3ps,
    valveFraction: state.heating && !state.cooling ? 1 : 0,
    dischargeAirTempC: now.sensedAirC + offsetK,
  };
}
