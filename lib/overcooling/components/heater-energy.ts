/** C1, electricity of space heaters because of overcooling [kWh]: their year's energy times the share used in cooling-season occupied hours. */
export const heaterEnergyKwh = (i: { plugKwh: number; overcooledFraction: number }): number =>
  i.plugKwh * i.overcooledFraction;
