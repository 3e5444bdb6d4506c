import { COMPLETE_SHARE } from "@/app/_components/charts/coverage-runs";
import type { FindingLine } from "@/app/_components/ui/findings-list";
import type { ZoneDataQualityDetail } from "@/lib/services/data-quality/read";
import { localDateFromDayNumber } from "@/lib/time/civil-date";
import { formatLocalDate } from "@/lib/time/format";
import { consequenceWords } from "@/lib/trends/quality/consequence-words";
import { quantityWords } from "@/lib/trends/quantity-words";
import { findingWords, pointWords, type Shown } from "../../../data-quality/view-model";

/** Gaps that are listed; others are counted. */
const GAPS_LISTED = 20;

export type ProblemLine = FindingLine & { stops: string };

/** Every problem with what to do and what it disqualifies. */
export function problemLines({ problems }: Pick<ZoneDataQualityDetail, "problems">, building: Shown): ProblemLine[] {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  return problems.map(({ finding, severity, consequences }, i) => {
    const { what, action } = findingWords(finding, words);
    return {
      key: `${finding.code}-${i}`,
      severity,
      sentence: what,
      action: action || undefined,
      stops: consequenceWords(finding, consequences),
    };
  });
}

/** The page's one sentence. */
export function zoneQualityLede({ problems, points, building }: ZoneDataQualityDetail): string {
  if (!building.record) return "No zone air temperature is recorded in this building yet.";
  const stopping = problems.filter(({ severity }) => severity === "disqualifies").length;
  const air = points.find(({ kind }) => kind === "zone-air-temp");
  const cover = air
    ? `${(100 * air.share).toFixed(1)} % of its zone air samples are there`
    : "its zone air is not recorded";
  const noun = problems.length === 1 ? "problem" : "problems";
  if (problems.length === 0) return `Nothing to remark: ${cover}, and nothing is stopped.`;
  return `${problems.length} ${noun}, of which ${stopping === 0 ? "none stops" : `${stopping} ${stopping === 1 ? "stops" : "stop"}`} the verdict or the cost; ${cover}.`;
}

export type GapLine = { key: string; points: string; from: string; to: string; hours: string; fate: string };

/** Gaps of an hour and more, longest first, and how many more there are than are listed. */
export function gapLines(
  { gaps }: Pick<ZoneDataQualityDetail, "gaps">,
  building: Shown,
): { lines: GapLine[]; more: number } {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  return {
    more: Math.max(0, gaps.length - GAPS_LISTED),
    lines: gaps.slice(0, GAPS_LISTED).map((gap) => ({
      key: `${gap.kinds.join()} ${gap.fromUtcSeconds}`,
      points: gap.kinds.map(pointWords).join(", "),
      from: words.instant(gap.fromUtcSeconds),
      to: words.instant(gap.toUtcSeconds),
      hours: gap.hours.toFixed(1),
      fate: gap.sampling === "change-of-value" ? "last value carried; the log may have stopped" : "left out",
    })),
  };
}

/** Days with fewer samples than a complete day has, those of equal shares next to each other in one row. */
export type PoorDays = { key: number; days: string; shares: string[] };

export function poorDays({ days, dayCount, firstDay }: Pick<ZoneDataQualityDetail, "days" | "dayCount" | "firstDay">): {
  rows: PoorDays[];
  completeDays: number;
} {
  const rows: (PoorDays & { to: number })[] = [];
  let completeDays = 0;
  const date = (k: number): string => formatLocalDate(localDateFromDayNumber(firstDay + k));
  for (let k = 0; k < dayCount; k++) {
    const own = days.map(({ shares }) => shares[k] as number);
    if (own.every((share) => share >= COMPLETE_SHARE)) {
      completeDays++;
      continue;
    }
    // Down, so that 99.9 % never reads as all.
    const shares = own.map((share) => String(Math.floor(100 * share)));
    const last = rows.at(-1);
    if (last && last.to === k - 1 && last.shares.join() === shares.join()) {
      last.to = k;
      last.days = `${date(last.key)} to ${date(k)}`;
    } else rows.push({ key: k, to: k, days: date(k), shares });
  }
  return { rows, completeDays };
}

/** What the calendar shows, for those who do not see it. */
export function calendarLabel({ zone, days, dayCount, firstDay }: ZoneDataQualityDetail): string {
  const lacking = days.map(({ kind, shares }) => {
    const count = [...shares].filter((share) => share < COMPLETE_SHARE).length;
    return `${pointWords(kind)} ${count}`;
  });
  const from = formatLocalDate(localDateFromDayNumber(firstDay));
  return `Samples of zone ${zone.code} by day, ${dayCount} days from ${from}. Days below 95 % by point: ${lacking.join(", ")}.`;
}
