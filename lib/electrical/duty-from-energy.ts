/** Share of the hours on in which a state of known power drew its power: kWh over kW times hours. */
export function dutyFromEnergy(logged: { energyKwh: number; hoursOn: number; statePowerW: number }): number {
  return logged.energyKwh / ((logged.statePowerW / 1000) * logged.hoursOn);
}

/** Energy in kWh of stretches at steady power. */
export function energyOfStretches(stretches: readonly { powerW: number; hours: number }[]): number {
  return stretches.reduce((sum, { powerW, hours }) => sum + (powerW * hours) / 1000, 0);
}
