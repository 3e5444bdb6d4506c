import { predictedPercentDissatisfied } from "@/lib/comfort/percent-dissatisfied";
import { voteOf } from "@/lib/comfort/predicted-mean-vote";
import { dayNumberFromLocalDate, type LocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { DESK_CONDITION, WARM_CLOTHING_CLO } from "./desk-condition";
import type { StopRules } from "./trial-plan";

export const STOP_RULES = ["hot-reports", "dissatisfied", "zone-air"] as const;
export type StopRule = (typeof STOP_RULES)[number];

/** What a rule looks at on one day: reports of a week, a share [%] or a temperature [°C]; the zone where it is one's. */
export type RuleFigure = { figure: number; on: LocalDate; zone: string | null; meanC: number | null };

/** A rule with its limit, the highest figure so far, and the first that reached the limit; null where there is none. */
export type RuleState = { rule: StopRule; limit: number; highest: RuleFigure | null; broken: RuleFigure | null };

/** What trends and reports say since a trial began, all of it of the proposal's zones. */
export type TrialRecord = {
  /** Local dates of hot reports, one for each. */
  hotReports: readonly LocalDate[];
  /** Mean zone air of occupied days [°C]. */
  zoneDays: readonly { zone: string; date: LocalDate; meanC: number }[];
};

/** A week is any seven days in a row: one that begins on a Monday would let a bad Thursday to Wednesday through. */
const WEEK_DAYS = 7;
/** Occupied days that a week's mean needs: common practice, no source. */
const LEAST_DAYS = 3;
/** A limit is reached in spite of the last digits of a mean. */
const ALIKE = 1e-9;

/** Holds a trial against the limits that were set before it began; a limit that is reached counts as broken. */
export function watchRules(rules: StopRules, record: TrialRecord): RuleState[] {
  const figures: Record<StopRule, { limit: number; all: RuleFigure[] }> = {
    "hot-reports": { limit: rules.hotReportsPerWeek, all: weeksOfReports(record.hotReports) },
    dissatisfied: { limit: rules.dissatisfiedPct, all: weeksOfZones(record.zoneDays) },
    "zone-air": {
      limit: rules.zoneAirTempC,
      all: record.zoneDays.map(({ zone, date, meanC }) => ({ figure: meanC, on: date, zone, meanC })),
    },
  };
  return STOP_RULES.map((rule) => {
    const { limit, all } = figures[rule];
    const inOrder = all.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : b.figure - a.figure));
    return {
      rule,
      limit,
      highest: inOrder.reduce<RuleFigure | null>(
        (most, each) => (most && most.figure >= each.figure ? most : each),
        null,
      ),
      broken: inOrder.find((each) => each.figure >= limit - ALIKE) ?? null,
    };
  });
}

/** Hot reports of the seven days that end on each day with one. */
function weeksOfReports(dates: readonly LocalDate[]): RuleFigure[] {
  const days = dates.map(numberOf);
  return [...new Set(days)].map((day) => ({
    figure: days.filter((each) => each <= day && each > day - WEEK_DAYS).length,
    on: localDateFromDayNumber(day),
    zone: null,
    meanC: null,
  }));
}

/** Predicted dissatisfied at each zone's mean air of the seven days that end on each of its days. */
function weeksOfZones(zoneDays: TrialRecord["zoneDays"]): RuleFigure[] {
  return [...new Set(zoneDays.map(({ zone }) => zone))].flatMap((zone) => {
    const own = zoneDays.filter((each) => each.zone === zone).map((each) => ({ ...each, day: numberOf(each.date) }));
    return own.flatMap(({ day, date }): RuleFigure[] => {
      const week = own.filter((each) => each.day <= day && each.day > day - WEEK_DAYS);
      if (week.length < LEAST_DAYS) return [];
      const meanC = week.reduce((sum, each) => sum + each.meanC, 0) / week.length;
      return [{ figure: warmDissatisfiedPct(meanC), on: date, zone, meanC }];
    });
  });
}

/** Predicted share of people too warm [%] in summer clothing (ISO 7730 method); 5, the least there is, where it is cool. */
export const warmDissatisfiedPct = (airTempC: number): number => {
  const condition = { ...DESK_CONDITION, clothingClo: WARM_CLOTHING_CLO, airTempC, radiantTempC: airTempC };
  return predictedPercentDissatisfied(Math.max(0, voteOf(condition).pmv));
};

function numberOf(date: LocalDate): number {
  const day = dayNumberFromLocalDate(date);
  if (day === null) throw new RangeError(`${date} is no date`);
  return day;
}
