/** Energy and its price by tariff period (on-peak, off-peak ...). */
export type PeriodUse = { period: string; energyKwh: number; pricePerKwh: number };

/**
 * Cost of energy under a time-of-use tariff and the price it comes to per kWh (reference T1), in major units, not
 * rounded. The effective price is null without energy.
 */
export function timeOfUseCost(periods: readonly PeriodUse[]): { cost: number; pricePerKwh: number | null } {
  let cost = 0;
  let energyKwh = 0;
  for (const each of periods) {
    cost += each.energyKwh * each.pricePerKwh;
    energyKwh += each.energyKwh;
  }
  return { cost, pricePerKwh: energyKwh > 0 ? cost / energyKwh : null };
}
