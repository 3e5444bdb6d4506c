/** Hours in which a kWh has one price: months 1-12, ISO weekdays 1-7, minutes after midnight by the wall clock. */
export type TariffPeriod = {
  name: string;
  pricePerKwh: number;
  months: readonly number[];
  weekdays: readonly number[];
  startMinute: number;
  endMinute: number;
};

/** A block of a month's energy: `upToKwh` is null for the last. */
export type TariffBlock = { upToKwh: number | null; pricePerKwh: number };

/** Hours of overcooling that share a price of a saved kWh. */
export type PricedHours = { label: string; hours: number; pricePerKwh: number };

/** Hours of a year, each with its month, weekday, minute of the day at its start and its weight (0 to 1). */
export type WeightedHours = {
  month: ArrayLike<number>;
  weekday: ArrayLike<number>;
  minute: ArrayLike<number>;
  weight: ArrayLike<number>;
};

/**
 * Weighted hours by tariff period (reference T1: a change is worth the price of its hours). Of periods that overlap the
 * first counts; what is in none has the price of all other hours.
 */
export function hoursByPeriod(
  hours: WeightedHours,
  periods: readonly TariffPeriod[],
  otherPricePerKwh: number,
): PricedHours[] {
  const inPeriod = new Float64Array(periods.length);
  let others = 0;
  for (let i = 0; i < hours.weight.length; i++) {
    const weight = hours.weight[i] as number;
    if (weight === 0) continue;
    let left = 1;
    periods.forEach((each, k) => {
      if (!each.months.includes(hours.month[i] as number) || !each.weekdays.includes(hours.weekday[i] as number))
        return;
      const start = hours.minute[i] as number;
      const overlap = Math.min(each.endMinute, start + 60) - Math.max(each.startMinute, start);
      const part = Math.min(left, Math.max(0, overlap) / 60);
      inPeriod[k] = (inPeriod[k] as number) + weight * part;
      left -= part;
    });
    others += weight * left;
  }
  return [
    ...periods.map((each, k) => ({ label: each.name, hours: inPeriod[k] as number, pricePerKwh: each.pricePerKwh })),
    { label: "all other hours", hours: others, pricePerKwh: otherPricePerKwh },
  ].filter((each) => each.hours > 0);
}

/** Price of a month's last kWh under blocks in rising order; the first block's where nothing is used. */
export function lastKwhPrice(blocks: readonly TariffBlock[], monthKwh: number): number {
  const block = blocks.find((each) => each.upToKwh === null || monthKwh <= each.upToKwh) ?? blocks.at(-1);
  if (!block) throw new RangeError("a tariff in blocks needs at least one");
  return block.pricePerKwh;
}

const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October"];
export const MONTH_NAMES: readonly string[] = [...MONTHS, "November", "December"];

/** Weighted hours by month, each at the price of the last kWh of its bill: what is saved comes off the top block. */
export function hoursByBlock(
  hours: WeightedHours,
  blocks: readonly TariffBlock[],
  monthlyKwh: readonly number[],
): PricedHours[] {
  const byMonth = new Float64Array(12);
  for (let i = 0; i < hours.weight.length; i++) {
    const month = (hours.month[i] as number) - 1;
    byMonth[month] = (byMonth[month] as number) + (hours.weight[i] as number);
  }
  return MONTH_NAMES.map((label, k) => ({
    label,
    hours: byMonth[k] as number,
    pricePerKwh: lastKwhPrice(blocks, monthlyKwh[k] ?? 0),
  })).filter((each) => each.hours > 0);
}
