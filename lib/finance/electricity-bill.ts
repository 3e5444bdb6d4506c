/** One month of an electricity bill. */
export type BillMonth = { energyKwh: number; demandKw: number };

export type BillRates = {
  pricePerKwh: number;
  demandPricePerKw: number;
  fixedPerMonth: number;
  /** Billed demand is at least this share of the year's highest; 0 without a ratchet. */
  ratchetFraction: number;
};

export type AnnualBill = {
  total: number;
  /** Bill divided by energy: holds demand and fixed charges, so it overstates what a kWh saved is worth. Null without energy. */
  blendedPricePerKwh: number | null;
};

/** A year's bill in major units: energy, demand (with its ratchet) and fixed charges (reference T1, T3). */
export function annualBill(months: readonly BillMonth[], rates: BillRates): AnnualBill {
  const highestKw = months.reduce((highest, each) => Math.max(highest, each.demandKw), 0);
  let total = 0;
  let energyKwh = 0;
  for (const each of months) {
    const billedKw = Math.max(each.demandKw, rates.ratchetFraction * highestKw);
    total += each.energyKwh * rates.pricePerKwh + billedKw * rates.demandPricePerKw + rates.fixedPerMonth;
    energyKwh += each.energyKwh;
  }
  return { total, blendedPricePerKwh: energyKwh > 0 ? total / energyKwh : null };
}
