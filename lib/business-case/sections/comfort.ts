import { formatTemperature } from "@/lib/units/format";
import { type CaseSection, number, text } from "../case-document";
import type { CaseComfortLine, CaseInput } from "../case-input";

const SIDES = { cold: "too cold", hot: "too warm", plant: "plant", people: "people" } as const;

/** What changes for people, on the cold side and on the hot one, and what is done when it goes wrong. */
export function comfortSection({ comfort, temps, risks, temperatureUnit }: CaseInput): CaseSection {
  return {
    id: "comfort",
    title: "Comfort and risk, on both sides",
    startsPage: true,
    blocks: [
      {
        kind: "table",
        id: "comfort",
        caption: "Comfort as it is and as it is expected, zones of the proposal, a year",
        columns: [
          { head: "What", align: "text" },
          { head: "Now", align: "number" },
          { head: "Expected", align: "number" },
          { head: "Interval", align: "number" },
        ],
        rows: comfort.map((each) => [
          text(each.label),
          number(each.before, each.decimals, each.unit),
          number(each.after, each.decimals, each.unit),
          text(intervalWords(each)),
        ]),
        total: null,
      },
      {
        kind: "table",
        id: "temps",
        caption: "Occupied cooling-season hours a year by zone air temperature, all zones of the proposal",
        columns: [
          { head: "Zone air", align: "text" },
          { head: "Hours now", align: "number" },
          { head: "Hours expected", align: "number" },
        ],
        rows: temps
          .filter(({ hoursBefore, hoursAfter }) => hoursBefore >= 0.5 || hoursAfter >= 0.5)
          .map(({ lowC, hoursBefore, hoursAfter }) => [
            text(
              `${formatTemperature(lowC, temperatureUnit).value} to ${formatTemperature(lowC + 0.5, temperatureUnit).text}`,
            ),
            number(hoursBefore, 0),
            number(hoursAfter, 0),
          ]),
        total: null,
      },
      {
        kind: "table",
        id: "risks",
        caption: "Risks and answers",
        columns: ["Side", "Risk", "Answer"].map((head) => ({ head, align: "text" })),
        rows: risks.map(({ side, risk, answer }) => [text(SIDES[side]), text(risk), text(answer)]),
        total: null,
      },
    ],
  };
}

const intervalWords = ({ interval, decimals }: CaseComfortLine): string =>
  interval === null
    ? ""
    : `${interval.low.toFixed(decimals)} to ${interval.high.toFixed(decimals)} (${interval.level} %)`;
