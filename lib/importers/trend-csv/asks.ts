import { kindOfName } from "./kind-of-name";
import type { Layout } from "./layout";
import type { PointTally } from "./point-tally";
import type { StatisticsTable } from "./statistics-table";
import type { TrendAnswers, TrendAsk } from "./trend-file";
import { answeredUnit, proposeUnit, unitChoices } from "./unit-question";

/** The building's locale only says which order is offered first; it decides nothing. */
export function dateOrderAsk(locale: string | undefined): TrendAsk {
  const proposal = locale === undefined ? undefined : /-(?:US|PH|PW|FM|MH)$/i.test(locale) ? "mdy" : "dmy";
  return {
    what: "date-order",
    choices: ["mdy", "dmy"],
    ...(proposal ? { proposal } : {}),
    question: "In dates such as 03/04/2026, which number is the month: the first (mdy) or the second (dmy)?",
  };
}

export const timeStartAsk = (): TrendAsk => ({
  what: "time-start",
  choices: [],
  question:
    "The times are seconds that have run since a start, as a simulation or a test instrument writes them. On which date and at what time, on the building's clock, did they start?",
});

export const clockAsk = (): TrendAsk => ({
  what: "clock",
  choices: ["standard-time-all-year", "local-time"],
  proposal: "standard-time-all-year",
  question:
    "Some times fall in the hour that clocks skip in spring. Does the system's clock stay on standard time all year, or does it follow local time (then those rows are held back)?",
});

export const valueColumnAsk = ({ choices, proposal }: StatisticsTable): TrendAsk => ({
  what: "value-column",
  choices,
  proposal,
  question: "Each row sums up an interval. Which column is the value to take?",
});

export const flagAsk = (flag: NonNullable<Layout["numericFlag"]>): TrendAsk => ({
  what: "flag-column",
  choices: flag.values,
  column: flag.heading,
  question: `The column "${flag.heading}" marks each row with a number. Which of them mean a good reading?`,
});

/** Questions about points without a unit, one for each set of units they may have; answered ones are not asked again. */
export function unitAsks(points: readonly PointTally[], answers: TrendAnswers): { asks: TrendAsk[]; unknown: number } {
  const groups = new Map<string, { choices: string[]; points: PointTally[] }>();
  for (const point of points) {
    if (point.draft.kind !== "numeric" || point.draft.unitAsWritten !== null || point.readings === 0) continue;
    const choices = unitChoices(point.name, kindOfName(point.name), Float64Array.from(point.sample));
    if (!choices || answeredUnit(point.name, choices, answers)) continue;
    const key = choices.join();
    const group = groups.get(key);
    if (group) group.points.push(point);
    else groups.set(key, { choices, points: [point] });
  }
  let unknown = 0;
  const asks = [...groups.values()].map(({ choices, points: asked }): TrendAsk => {
    unknown += asked.length;
    const proposal = proposeUnit(
      choices,
      asked.map((point) => Float64Array.from(point.sample)),
    );
    return {
      what: "unit",
      points: asked.map((point) => point.name),
      choices,
      ...(proposal ? { proposal } : {}),
      question: "The file gives no unit for these points. Which unit are they in?",
    };
  });
  return { asks, unknown };
}
