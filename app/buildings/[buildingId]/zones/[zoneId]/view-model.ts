import type { ZoneSeries } from "@/app/_components/charts/zone-series";
import type { FindingLine } from "@/app/_components/ui/findings-list";
import { countOfDay } from "@/lib/comfort-reports/disclosure/disclosure-words";
import type { Building } from "@/lib/services/buildings/find";
import type { ZoneDay } from "@/lib/services/zones/days";
import type { ZoneHistory } from "@/lib/services/zones/history";
import type { ZoneDetail } from "@/lib/services/zones/overview";
import { formatLocalDate } from "@/lib/time/format";
import { localDateAt } from "@/lib/time/local-date";
import { evidenceWords } from "@/lib/trends/diagnosis/evidence-words";
import { PROPOSAL_WORDS, RAISING_WORDS, VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";
import type { ChartPoint } from "@/lib/trends/downsample";
import { trendFindingWords } from "@/lib/trends/findings";
import { quantityWords } from "@/lib/trends/quantity-words";
import { formatNumber, formatTemperature } from "@/lib/units/format";
import { belowTargetPct } from "../view-model";

type Shown = Pick<Building, "temperatureUnit" | "timeZone" | "targetZoneAirTempC">;

/** The zone's one sentence: its verdict with the evidence in the same breath. */
export function zoneLede(overview: ZoneDetail | undefined, building: Shown): string {
  const { diagnosis, analysis } = overview ?? {};
  const mean = analysis?.exposure.occupiedZoneAirTempC?.mean;
  if (!diagnosis || mean === undefined)
    return "No trend log says what the temperature was. Bring one in, and this page says why.";
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  const target = words.temp(building.targetZoneAirTempC);
  const missing = diagnosis.missingPoints.map(pointName).join(", ");
  const below = overview ? belowTargetPct(overview) : "";
  const evidence = `${words.temp(mean)} on average in occupied hours${below ? `, below the target of ${target} in ${below} % of those of the cooling season` : ""}`;
  const verdict = `Verdict: ${VERDICT_WORDS[diagnosis.verdict]} (${evidence}).`;
  const proposal = PROPOSAL_WORDS[diagnosis.verdict];
  if (diagnosis.verdict === "undetermined")
    return `${verdict} ${proposal} ${missing ? `A trend of ${missing} would tell.` : "The record does not tell."}`;
  if (diagnosis.verdict === "healthy") return verdict;
  if (diagnosis.verdict === "personal-need") return `${verdict} ${proposal}`;
  return `${verdict} ${proposal} ${RAISING_WORDS[diagnosis.raisingSetpointHelps]}`;
}

export function causeLines(overview: ZoneDetail | undefined, building: Shown): FindingLine[] {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  return (overview?.diagnosis?.causes ?? []).map((cause) => {
    const { what, action } = trendFindingWords(cause, words);
    return {
      key: cause.code,
      severity: cause.severity,
      sentence: what,
      action,
      evidence: evidenceWords(cause, words),
    };
  });
}

/** What stands where no cause is named: a cold zone that cannot be judged is not called sound. */
export function noCauseWords(overview: ZoneDetail | undefined, isWorkedOut: boolean): string {
  if (!isWorkedOut) return "Not yet worked out.";
  if (!overview?.analysis || !overview.diagnosis) return "There are no trends of this zone yet.";
  if (overview.diagnosis.verdict !== "undetermined") return "No cause stands out in these trends and reports.";
  const missing = overview.diagnosis.missingPoints.map(pointName).join(" and ");
  return `What keeps this zone from its target cannot be told${missing ? ` without a trend of ${missing}` : ""}: cooling is not assumed.`;
}

/** A point as one names it in a sentence. */
const pointName = (kind: string): string => kind.replaceAll("-", " ").replace(/ temp$/, " temperature");

export function dataFindingLines(overview: ZoneDetail | undefined, building: Shown): FindingLine[] {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  return (overview?.analysis?.exposure.findings ?? []).map((finding, i) => {
    const { what, action } = trendFindingWords(finding, words);
    return { key: `${finding.code}-${i}`, severity: finding.severity, sentence: what, action };
  });
}

/** Mean zone air by hour of the week less the target, or null without trends. */
export function weekDifferences(overview: ZoneDetail | undefined, targetC: number): (number | null)[][] | null {
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
    comfortBand: history.comfortBand.map(({ utcSeconds, lowC, highC }) => ({ t: utcSeconds, low: lowC, high: highC })),
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
  mean: string;
  lowest: string;
  highest: string;
  coolingSetpoint: string;
  heatingSetpoint: string;
  coolingHours: string;
  deadbandHours: string;
  reheatHours: string;
  otherHours: string;
  belowTargetKh: string;
  reports: string;
};

/** The days of the period shown: what was sampled, what the box did in counted hours, and how far below the target it was. */
export function dailyRows(history: ZoneHistory, days: readonly ZoneDay[], building: Shown): DailyRow[] {
  const temp = (value: number | undefined): string =>
    value === undefined ? "" : formatTemperature(value, building.temperatureUnit).value;
  const figure = (value: number): string => formatNumber(value, { decimals: 1 });
  const first = localDateAt(history.fromUtcSeconds * 1000, building.timeZone);
  const last = localDateAt((history.toUtcSeconds - 1) * 1000, building.timeZone);
  const desks = new Map<string, (string | null)[]>();
  for (const { utcSeconds, desk } of history.reports) {
    const date = localDateAt(utcSeconds * 1000, building.timeZone);
    desks.set(date, [...(desks.get(date) ?? []), desk]);
  }
  const shown = days.filter(({ date }) => date >= first && date <= last);
  return shown.map(({ date, zoneAir, zoneAirRange, coolingSetpointRange, heatingSetpointRange, exposure }) => {
    const { hours } = exposure;
    return {
      date,
      mean: zoneAir.value === null ? missingMean(zoneAir.coverage) : temp(zoneAir.value),
      lowest: temp(zoneAirRange?.lowest),
      highest: temp(zoneAirRange?.highest),
      coolingSetpoint: temp(coolingSetpointRange?.lowest),
      heatingSetpoint: temp(heatingSetpointRange?.highest),
      coolingHours: figure(hours.cooling),
      deadbandHours: figure(hours.deadband),
      reheatHours: figure(hours.reheat),
      otherHours: figure(hours.fault + hours.undetermined),
      belowTargetKh: figure(exposure.overcoolingKh),
      reports: countOfDay(desks.get(date) ?? []),
    };
  });
}

/** Why a day has no mean. */
const missingMean = (coverage: number): string =>
  coverage === 0 ? "no samples" : `${Math.floor(100 * coverage)} % sampled`;
