import { LEAST_PEOPLE } from "@/lib/comfort-reports/disclosure/disclose-counts";
import { CIRCUIT_OUTCOMES } from "@/lib/proposals/live-circuit";
import { formatTemperature } from "@/lib/units/format";
import { type CaseBlock, type CaseSection, number, text } from "../case-document";
import type { CaseComfortLine, CaseInput } from "../case-input";

const WITHHELD: CaseBlock = {
  kind: "paragraph",
  runs: [
    `Expected reports are withheld where fewer than ${LEAST_PEOPLE.publication} people have reported in the zones of a variant: figures could be traced to them. Facilities people see them with the proposal.`,
  ],
};

const SIDES = { cold: "too cold", hot: "too warm", plant: "plant", people: "people" } as const;

/** What changes for people, on the cold side and on the hot one, and what is done when it goes wrong. */
export function comfortSection({ comfort, variants, temps, circuits, risks, temperatureUnit }: CaseInput): CaseSection {
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
      ...(variants.some(({ reportsWithheld }) => reportsWithheld) ? [WITHHELD] : []),
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
      ...circuitsTable(circuits),
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

/** Circuits that heaters of these zones hang on, against their planning limits; nothing where none is on record. */
const circuitsTable = (circuits: CaseInput["circuits"]): CaseBlock[] =>
  circuits.length === 0
    ? []
    : [
        {
          kind: "table",
          id: "circuits",
          caption:
            "Circuits of these zones' heaters: load with everything at its highest, as their planning limits count it",
          columns: [
            { head: "Circuit", align: "text" },
            { head: "Today", align: "number" },
            { head: "Expected", align: "number" },
            { head: "All gone", align: "number" },
            { head: "Planning limit", align: "number" },
            { head: "What comes of it", align: "text" },
          ],
          rows: circuits.map(({ name, todayA, expectedA, allGoneA, limitA, outcome }) => [
            text(name),
            number(todayA, 1, "A"),
            number(expectedA, 1, "A"),
            number(allGoneA, 1, "A"),
            limitA === null ? text("not known") : number(limitA, 1, "A"),
            text(CIRCUIT_OUTCOMES[outcome]),
          ]),
          total: null,
        },
      ];

const intervalWords = ({ interval, decimals }: CaseComfortLine): string =>
  interval === null
    ? ""
    : `${interval.low.toFixed(decimals)} to ${interval.high.toFixed(decimals)} (${interval.level} %)`;
