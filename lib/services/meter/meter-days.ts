import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listElectricityBills } from "@/db/queries/electricity-bills";
import type { PointRow } from "@/db/queries/points";
import type { MeterBill, MeterDay } from "@/lib/energy-model/meter/meter-record";
import { mean } from "@/lib/statistics/moments";
import { dayNumberFromLocalDate, isoWeekday } from "@/lib/time/civil-date";
import { dayStart, type LocalDays, localDateOfDay, localDaysOver } from "@/lib/time/local-days";
import { holidayDays, type OccupiedHours } from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";
import { dayEnergies } from "@/lib/trends/daily/day-energies";
import { spanMeans } from "@/lib/trends/daily/span-means";
import type { PointSeries } from "@/lib/trends/samples";
import type { Context } from "../context";
import type { Meter } from "./meters";

/** Least share of a day's hours for its mean outdoor air temperature (CalTRACK 2.0, 2.2). */
const LEAST_OUTDOOR_COVERAGE = 0.5;

/** Days read back from the last one of a meter: a baseline year and the day that a leap year has more. */
const DAYS_READ = 366;

/** Time before a day in which the value that holds at its beginning is looked for [s]. */
const HOLD_SECONDS = 86_400;

/** The last year (or more) of a trended meter by local day, with mean outdoor air temperatures; empty when it holds nothing. */
export async function readMeterDays(
  ctx: Context,
  building: BuildingRow,
  meter: Extract<Meter, { source: "point" }>,
  outdoor: PointRow,
  daysRead = DAYS_READ,
): Promise<MeterDay[]> {
  const [extent] = await ctx.trends.extent([meter.point.id]);
  if (!extent) return [];
  const zone = zoneTable(building.timeZone);
  const lastTs = extent.lastTs + 1;
  const days = localDaysOver(zone, {
    fromUtcSeconds: Math.max(extent.firstTs, lastTs - daysRead * 86_400),
    toUtcSeconds: lastTs,
  });
  const energies = dayEnergies(meter.point.kind, await seriesOf(ctx, meter.point, days), days);
  const outdoorC = outdoorMeans(await seriesOf(ctx, outdoor, days), days);
  const isOccupied = occupiedDays(findOccupiedHours(ctx.db, building.id));
  const all = Array.from(energies, (energyKwh, k) => ({
    date: localDateOfDay(days, k),
    energyKwh,
    outdoorC: outdoorC[k] as number,
    occupied: isOccupied(days.firstDay + k),
  }));
  // The day on which a record begins or ends is hardly ever whole.
  return trimUnknownEnds(all);
}

/** The bills of a building with the mean outdoor air temperature of their days. */
export async function readMeterBills(ctx: Context, building: BuildingRow, outdoor: PointRow): Promise<MeterBill[]> {
  const bills = listElectricityBills(ctx.db, building.id);
  const [first, last] = [bills[0], bills.at(-1)];
  if (!first || !last) return [];
  const zone = zoneTable(building.timeZone);
  const dayOf = (date: string): number => dayNumberFromLocalDate(date) ?? 0;
  const days = localDaysOver(zone, {
    fromUtcSeconds: dayStart(zone, dayOf(first.fromDate)),
    toUtcSeconds: dayStart(zone, dayOf(last.untilDate)),
  });
  const means = outdoorMeans(await seriesOf(ctx, outdoor, days), days);
  return bills.map(({ fromDate, untilDate, energyKwh }) => {
    const [from, until] = [fromDate, untilDate].map((date) => dayOf(date) - days.firstDay);
    const known = Array.from(means.subarray(from, until)).filter((each) => !Number.isNaN(each));
    const billDays = (until as number) - (from as number);
    const enough = known.length >= LEAST_BILL_COVERAGE * billDays;
    return {
      from: fromDate,
      to: untilDate,
      days: billDays,
      energyKwh,
      outdoorC: enough ? mean(known) : Number.NaN,
    };
  });
}

/** Least share of a bill's days with an outdoor air temperature: 90 % (CalTRACK 2.0, 2.2). */
const LEAST_BILL_COVERAGE = 0.9;

const outdoorMeans = (series: PointSeries, days: LocalDays): Float64Array =>
  Float64Array.from(
    spanMeans(series, days.edges, { leastCoverage: LEAST_OUTDOOR_COVERAGE }),
    ({ value }) => value ?? Number.NaN,
  );

async function seriesOf(ctx: Context, point: PointRow, days: LocalDays): Promise<PointSeries> {
  const from = (days.edges[0] as number) - (point.sampling === "change-of-value" ? HOLD_SECONDS : 0);
  for await (const slice of ctx.trends.read([point.id], from, days.edges[days.count] as number))
    return { samples: slice, sampling: point.sampling };
  throw new Error("the trend store gave no slice for a point");
}

/** Whether a building is occupied at all on a day, by weekday and holidays. */
function occupiedDays(hours: OccupiedHours): (day: number) => boolean {
  const holidays = holidayDays(hours);
  return (day) => !holidays.has(day) && (hours.weekdays[isoWeekday(day)] ?? []).length > 0;
}

function trimUnknownEnds(days: MeterDay[]): MeterDay[] {
  const isKnown = (day: MeterDay): boolean => !Number.isNaN(day.energyKwh);
  const first = days.findIndex(isKnown);
  return first < 0 ? [] : days.slice(first, days.findLastIndex(isKnown) + 1);
}
