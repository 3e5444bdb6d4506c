/** Price of a kWh of useful heat from a fuel at an efficiency (0-1, or a heat pump's COP): price / efficiency. */
export const usefulHeatPrice = (fuel: { pricePerKwh: number; efficiency: number }): number =>
  fuel.pricePerKwh / fuel.efficiency;
