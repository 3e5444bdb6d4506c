import type { MeterBill, MeterDay } from "@/lib/energy-model/meter/meter-record";
import { normalPair } from "@/lib/statistics/normal";
import { seededRandom } from "@/lib/statistics/random";
import { dayNumber, isoWeekday, localDateFromDayNumber } from "@/lib/time/civil-date";
import { GREENSBORO_C } from "../../overcooling/offices";

const FIRST_DAY = dayNumber(2025, 1, 1);

/** Daily means of Greensboro's typical year [°C]. */
export const DAILY_MEANS_C: number[] = Array.from(
  { length: 365 },
  (_, day) => GREENSBORO_C.slice(day * 24, day * 24 + 24).reduce((sum, each) => sum + each, 0) / 24,
);

export type Planted = {
  base: number;
  coolingSlope: number;
  coolingChangeC: number;
  heatingSlope?: number;
  heatingChangeC?: number;
  /** Standard deviation [kWh] and lag-1 autocorrelation of the noise. */
  noiseKwh: number;
  rho?: number;
  /** Energy of a day that is not occupied, without any slope. */
  idleKwh?: number;
  seed?: number;
};

/** A year of days from planted parameters; Saturdays and Sundays are not occupied. */
export function syntheticDays(planted: Planted): MeterDay[] {
  const { base, coolingSlope, coolingChangeC, heatingSlope = 0, heatingChangeC = 0, noiseKwh, rho = 0 } = planted;
  const random = seededRandom(planted.seed ?? 7);
  let noise = 0;
  return DAILY_MEANS_C.map((outdoorC, i) => {
    noise = rho * noise + Math.sqrt(1 - rho * rho) * noiseKwh * normalPair(random)[0];
    const occupied = isoWeekday(FIRST_DAY + i) <= 5;
    const wings =
      coolingSlope * Math.max(0, outdoorC - coolingChangeC) + heatingSlope * Math.max(0, heatingChangeC - outdoorC);
    const idle = !occupied && planted.idleKwh !== undefined;
    return {
      date: localDateFromDayNumber(FIRST_DAY + i),
      energyKwh: (idle ? (planted.idleKwh as number) : base + wings) + noise,
      outdoorC,
      occupied,
    };
  });
}

/** The same year as twelve bills of 30 or 31 days. */
export function billsOf(days: readonly MeterDay[]): MeterBill[] {
  return Array.from({ length: 12 }, (_, k) => {
    const part = days.slice(Math.round((k * 365) / 12), Math.round(((k + 1) * 365) / 12));
    const sum = (of: (day: MeterDay) => number): number => part.reduce((total, day) => total + of(day), 0);
    return {
      from: part[0]?.date ?? "",
      to: part.at(-1)?.date ?? "",
      days: part.length,
      energyKwh: sum((day) => day.energyKwh),
      outdoorC: sum((day) => day.outdoorC) / part.length,
    };
  });
}
