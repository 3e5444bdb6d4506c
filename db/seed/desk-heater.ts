/** A portable heater as the simulation knows it: at whose desk it stands and what it takes. */
export type DeskHeater = {
  /** Index of the desk in its zone. */
  desk: number;
  /** Heat while it is switched on and its thermostat closed, and the share of the time in which it is closed. */
  powerW: number;
  dutyFraction: number;
  /** Its owner switches it on when the air at the desk is colder than this, and off when 1 K warmer. */
  onBelowC: number;
  /** Steps in which the owner is at the desk on a day when they think of it. */
  ownerThere: Uint8Array;
};

const SWITCHED_OFF_ABOVE_K = 1;

/** Whether the owner has the heater on in a step, from what was before and the air at the desk. */
export function heaterIsOn(heater: DeskHeater, now: { step: number; wasOn: boolean; deskAirC: number }): boolean {
  if (heater.ownerThere[now.step] !== 1) return false;
  return now.deskAirC < heater.onBelowC + (now.wasOn ? SWITCHED_OFF_ABOVE_K : 0);
}
