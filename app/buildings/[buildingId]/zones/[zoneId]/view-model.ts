import type { ZoneSeries } from "@/app/_components/charts/zone-series";
import type { FindingLine } from "@/app/_components/ui/findings-list";
import type { Building } from "@/lib/services/buildings/find";
import type { ZoneHistory } from "@/lib/services/zones/history";
import type { ZoneOverview } from "@/lib/services/zones/overview";
import { formatLocalDate } from "@/lib/time/format";
import { localDateAt } from "@/lib/time/local-date";
import { RAISING_WORDS, VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";
import type { ChartPoint } from "@/lib/trends/downsample";
import { trendFindingWords } from "@/lib/trends/findings";
import { quantityWords } from "@/lib/trends/quantity-words";
import { formatTemperature } from "@/lib/units/format";
import { belowTargetPct } from "../view-model";

type Shown = Pick<Building, "temperatureUnit" | "timeZone" | "targetZoneAirTempC">;

/** The zone's one sentence: its verdict with the evidence in the same breath. */
export function zoneLede(overview: ZoneOverview | undefined, building: Shown): string {
  const { diagnosis, analysis } = overview ?? {};
  const mean = analysis?.exposure.occupiedZoneAirTempC?.mean;
  if (!diagnosis || mean === undefined)
    return "No trend log says what the temperature was. Bring one in, and this page says why.";
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  const target = words.temp(building.targetZoneAirTempC);
  const missing = diagnosis.missingPoints.map((kind) => kind.replaceAll("-", " ")).join(", ");
  const below = overview ? belowTargetPct(overview) : "";
  const evidence = `${words.temp(mean)} on average in occupied hours${below ? `, below the target of ${target} in ${below} % of those of the cooling season` : ""}`;
  const verdict = `Verdict: ${VERDICT_WORDS[diagnosis.verdict]} (${evidence}).`;
  if (diagnosis.verdict === "undetermined")
    return `${verdict} ${missing ? `A trend of ${missing} would tell.` : "The record does not tell."}`;
  if (diagnosis.verdict === "healthy" || diagnosis.verdict === "personal-need") return verdict;
  return `${verdict} ${RAISING_WORDS[diagnosis.raisingSetpointHelps]}`;
}

export function causeLines(overview: ZoneOverview | undefined, building: Shown): FindingLine[] {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  return (overview?.diagnosis?.causes ?? []).map((cause) => {
    const { what, action } = trendFindingWords(cause, words);
    return { key: cause.code, severity: cause.severity, sentence: what, action };
  });
}

export function dataFindingLines(overview: ZoneOverview | undefined, building: Shown): FindingLine[] {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  return (overview?.analysis?.exposure.findings ?? []).map((finding, i) => {
    const { what, action } = trendFindingWords(finding, words);
    return { key: `${finding.code}-${i}`, severity: finding.severity, sentence: what, action };
  });
}

/** Mean zone air by hour of the week less the target, or null without trends. */
export function weekDifferences(overview: ZoneOverview | undefined, targetC: number): (number | null)[][] | null {
  const means = overview?.analysis?.statistics.weekHourMeansC;
  return means?.map((day) => day.map((mean) => (mean === null ? null : mean - targetC))) ?? null;
}

export function chartLabel({ zone, period }: ZoneHistory): string {
  return `Zone ${zone.code}: zone air temperature against its cooling and heating setpoints, ${period.days} days from ${formatLocalDate(period.from)}`;
}

/** Missing values are left out: the picture breaks a line where too much time passes. */
const linePoints = (points: readonly ChartPoint[]) =>
  points.flatMap(({ utcSeconds, value }) => (value === null ? [] : { t: utcSeconds, v: value }));

export function chartSeries(history: ZoneHistory, building: Shown): ZoneSeries {
  return {
    timeZone: building.timeZone,
    from: history.fromUtcSeconds,
    to: history.toUtcSeconds,
    zoneAir: linePoints(history.zoneAir),
    coolingSetpoint: linePoints(history.coolingSetpoint),
    heatingSetpoint: linePoints(history.heatingSetpoint),
    reports: history.reports.map(({ utcSeconds, vote }) => ({ t: utcSeconds, vote })),
    heaters: history.devices
      .filter((device) => device.kind === "space-heater")
      .map(({ foundUtcSeconds }) => ({
        t: Math.min(Math.max(foundUtcSeconds, history.fromUtcSeconds), history.toUtcSeconds),
      })),
  };
}

export type DailyRow = {
  date: string;
  lowest: string;
  highest: string;
  coolingSetpoint: string;
  heatingSetpoint: string;
  reports: number;
};

/** Lowest and highest of each local day from the same points as the picture. */
export function dailyRows(history: ZoneHistory, building: Shown): DailyRow[] {
  const dateOf = (utcSeconds: number) => localDateAt(utcSeconds * 1000, building.timeZone);
  const temp = (value: number | undefined) =>
    value === undefined ? "" : formatTemperature(value, building.temperatureUnit).value;
  const byDay = (points: readonly ChartPoint[]) => {
    const days = new Map<string, { low: number; high: number }>();
    for (const { utcSeconds, value } of points) {
      if (value === null) continue;
      const date = dateOf(utcSeconds);
      const day = days.get(date);
      days.set(date, { low: Math.min(day?.low ?? value, value), high: Math.max(day?.high ?? value, value) });
    }
    return days;
  };
  const air = byDay(history.zoneAir);
  const cooling = byDay(history.coolingSetpoint);
  const heating = byDay(history.heatingSetpoint);
  const reports = new Map<string, number>();
  for (const { utcSeconds } of history.reports)
    reports.set(dateOf(utcSeconds), (reports.get(dateOf(utcSeconds)) ?? 0) + 1);
  const dates = [...new Set([...air.keys(), ...reports.keys()])].sort();
  return dates.map((date) => ({
    date,
    lowest: temp(air.get(date)?.low),
    highest: temp(air.get(date)?.high),
    coolingSetpoint: temp(cooling.get(date)?.low),
    heatingSetpoint: temp(heating.get(date)?.high),
    reports: reports.get(date) ?? 0,
  }));
}
