import { LEFT_OUT_OF_A_PROMISE } from "@/lib/proposals/live/left-out";
import { type CaseSection, moneyRange, text } from "../case-document";
import type { CaseInput } from "../case-input";

/** How the figures were worked out, and what they leave out. */
export function methodSection({ method, savingDraws, proposal, assumptions }: CaseInput): CaseSection {
  const defaults = assumptions.filter(({ origin }) => origin === "default").length;
  return {
    id: "method",
    title: "Method",
    startsPage: true,
    blocks: [
      {
        kind: "paragraph",
        runs: [
          `Method of tier ${method.tier}, ${method.label}. Each zone's record of the cooling season is split by what its controller did: cooling, at minimum airflow, reheating. A lever is credited only with the hours in which it acts. Saved heat is bought by the plant's efficiency and valued at the price of a saved kWh, not at the bill's average.`,
        ],
      },
      ...(method.costBefore
        ? [
            {
              kind: "paragraph" as const,
              runs: ["What overcooling costs the building as it stands: ", moneyRange(method.costBefore), " a year."],
            },
          ]
        : []),
      {
        kind: "paragraph",
        runs: [
          `Ranges are 80 % ranges over ${savingDraws.length} draws of all uncertain inputs together: in one draw of ten the figure lies below the range, in one above it. ${defaults} of the ${assumptions.length} assumptions are defaults of the tool; the others are the building's own. Stated values, with every input at its stated value, can be recomputed by hand and in the workbook; they lie beside the middle of a range where ranges are skewed.`,
        ],
      },
      {
        kind: "list",
        items: [
          ...(method.isOfSeason
            ? [`Only what lies in ${proposal.season}, ${proposal.hours}, is counted.`, LEFT_OUT_OF_A_PROMISE]
            : []),
          "Heaters do not go by themselves: only the share that people are expected to give up is counted, and what comes in their place is taken off.",
          "A change is undone in time: the first year holds only the part for which it lasts, and later years end with its life.",
          "What is drawn apart for each zone in the cost (sensor, minimum airflow, energy of heaters) stays at its stated value here: these ranges are somewhat narrower than the cost's.",
          "Left out by design: demand charges, productivity, health, life of equipment and risk of fire. They carry no money here.",
        ],
      },
      {
        kind: "table",
        id: "measures",
        caption: "What is changed, zone by zone",
        columns: ["Zone", "Lever", "Change", "Remark"].map((head) => ({ head, align: "text" })),
        rows: proposal.measures.map((each) => [
          text(each.zoneCode),
          text(each.lever),
          text(each.change),
          text(each.remark),
        ]),
        total: null,
      },
    ],
  };
}
