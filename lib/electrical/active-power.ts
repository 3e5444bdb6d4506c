/**
 * Active power of a single-phase load in W: P = V·I·PF (definition of the power factor, RMS values).
 * With a power factor of 1 it is the apparent power, which is the most the load can take.
 */
export function activePowerW(load: { voltageV: number; currentA: number; powerFactor: number }): number {
  return load.voltageV * load.currentA * load.powerFactor;
}

/** Power factor of a load whose watts and current were both read: active over apparent power. */
export function powerFactorOf(load: { voltageV: number; currentA: number; powerW: number }): {
  apparentPowerVa: number;
  powerFactor: number;
} {
  const apparentPowerVa = load.voltageV * load.currentA;
  return { apparentPowerVa, powerFactor: load.powerW / apparentPowerVa };
}

/**
 * Power of a heating element at another voltage: P₂ = P₁·(V₂/V₁)². For demand and for judging a reading; a
 * thermostat makes up for a low voltage by running longer, so energy does not follow. Not for motors.
 */
export function elementPowerAtVoltageW(element: { powerW: number; voltageV: number; newVoltageV: number }): number {
  return element.powerW * (element.newVoltageV / element.voltageV) ** 2;
}

/** Current of a heating element at another voltage: I₂ = I₁·V₂/V₁. Not for motors. */
export function elementCurrentAtVoltageA(element: { currentA: number; voltageV: number; newVoltageV: number }): number {
  return (element.currentA * element.newVoltageV) / element.voltageV;
}
