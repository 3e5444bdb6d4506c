import { quantiles } from "@/lib/statistics/quantile";
import type { LocalDate } from "@/lib/time/civil-date";
import { LEAST_BILLS, LEAST_DAYS, UNUSUAL_RANGES } from "../change-point/fit-rules";
import type { MeterFinding } from "./meter-finding";

/** A day of a meter. NaN where the energy [kWh] or the mean outdoor air temperature [°C] is not known. */
export type MeterDay = { date: LocalDate; energyKwh: number; outdoorC: number; occupied: boolean };

/**
 * A bill with the mean outdoor air temperature of its days [°C], NaN where it is not known. `to` is the first day that
 * it does not cover.
 */
export type MeterBill = { from: LocalDate; to: LocalDate; days: number; energyKwh: number; outdoorC: number };

/** One reading that a model is fitted to: energy of a day, or of a mean day of a bill. */
export type MeterReading = { date: LocalDate; outdoorC: number; energyKwh: number };

export type MeterRecord = {
  from: LocalDate;
  /** Last day. */
  to: LocalDate;
  /** Days or bills of the record, and how many of them can be used. */
  count: number;
  usable: number;
  findings: MeterFinding[];
};

/** Days that a baseline looks back. */
const BASELINE_DAYS = 365;

/**
 * The last 365 days of a meter as a baseline: days without energy, without outdoor air, or with an energy of 0 are
 * missing (CalTRACK 2.0, 2.2: electricity of 0 is a missing reading), and energies far above the rest are named. `days`
 * are consecutive and end with the last day of the meter.
 */
export function baselineOfDays(days: readonly MeterDay[]): { record: MeterRecord; usable: MeterDay[] } {
  const baseline = days.slice(-BASELINE_DAYS);
  const usable = baseline.filter(isUsable);
  const findings: MeterFinding[] = [];
  const missing = {
    energyDays: baseline.filter((day) => Number.isNaN(day.energyKwh)).length,
    zeroDays: baseline.filter((day) => day.energyKwh === 0).length,
    outdoorDays: baseline.filter((day) => day.energyKwh > 0 && Number.isNaN(day.outdoorC)).length,
  };
  if (usable.length < LEAST_DAYS) {
    const evidence = { days: usable.length, leastDays: LEAST_DAYS, recordedDays: baseline.length, ...missing };
    findings.push({ code: "days-few", severity: "disqualifies", evidence });
  } else if (usable.length < baseline.length) {
    findings.push({ code: "days-missing", severity: "note", evidence: { days: usable.length, ...missing } });
  }
  const unusual = unusualReadings(usable);
  if (unusual.length > 0) {
    const evidence = { days: unusual.map((day) => day.date), ranges: UNUSUAL_RANGES };
    findings.push({ code: "energy-unusual", severity: "caution", evidence });
  }
  return { record: recordOf(baseline, usable.length, findings), usable };
}

/** Bills that a baseline looks back: three years of months. Judgement: an older building is another one. */
const MOST_BILLS = 36;

/**
 * The last bills of a building, in the order of time, as readings of a mean day each. A bill whose days overlap an earlier
 * one is left out and named: its energy would count twice.
 */
export function baselineOfBills(bills: readonly MeterBill[]): { record: MeterRecord; readings: MeterReading[] } {
  const apart: MeterBill[] = [];
  for (const bill of bills) if (!apart.some((earlier) => earlier.to > bill.from)) apart.push(bill);
  const baseline = apart.slice(-MOST_BILLS);
  const usable = baseline.filter((bill) => bill.energyKwh > 0 && bill.days > 0 && Number.isFinite(bill.outdoorC));
  const findings: MeterFinding[] = [];
  const overlapping = bills.filter((bill) => !apart.includes(bill));
  if (overlapping.length > 0) {
    const evidence = { bills: overlapping.map((bill) => bill.from) };
    findings.push({ code: "bills-overlap", severity: "caution", evidence });
  }
  if (usable.length < LEAST_BILLS) {
    const evidence = {
      bills: usable.length,
      leastBills: LEAST_BILLS,
      recordedBills: baseline.length,
      outdoorBills: baseline.filter((bill) => Number.isNaN(bill.outdoorC)).length,
    };
    findings.push({ code: "bills-few", severity: "disqualifies", evidence });
  }
  const readings = usable.map(({ from, outdoorC, energyKwh, days }) => ({
    date: from,
    outdoorC,
    energyKwh: energyKwh / days,
  }));
  return {
    record: recordOf(
      baseline.map(({ from }) => ({ date: from })),
      usable.length,
      findings,
    ),
    readings,
  };
}

const isUsable = (day: MeterDay): boolean => day.energyKwh > 0 && Number.isFinite(day.outdoorC);

/** Readings above the median by more than three interquartile ranges (CalTRACK 2.0, 2.3.6): told, not left out. */
function unusualReadings(days: readonly MeterDay[]): MeterDay[] {
  if (days.length === 0) return [];
  const [q1, q2, q3] = quantiles(
    days.map((day) => day.energyKwh),
    [0.25, 0.5, 0.75],
  ) as [number, number, number];
  return days.filter((day) => day.energyKwh > q2 + UNUSUAL_RANGES * (q3 - q1));
}

const recordOf = (baseline: readonly { date: LocalDate }[], usable: number, findings: MeterFinding[]): MeterRecord => ({
  from: baseline[0]?.date ?? "",
  to: baseline.at(-1)?.date ?? "",
  count: baseline.length,
  usable,
  findings,
});
