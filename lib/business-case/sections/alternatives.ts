import { type CaseSection, type CaseValue, moneyRange, number, range, text } from "../case-document";
import type { CaseInput, CaseVariant } from "../case-input";

/** What else was weighed, with the same draws. */
export function alternativesSection({ variants, building }: CaseInput): CaseSection {
  const others = variants.length - 1;
  return {
    id: "alternatives",
    title: "Alternatives",
    startsPage: false,
    blocks: [
      {
        kind: "paragraph",
        runs: [
          others === 0
            ? "No other variant was worked out with this proposal. The alternative is to leave things as they are: nothing saved, nothing spent."
            : `${others === 1 ? "One other variant was" : `${others} other variants were`} worked out with the same draws, beside leaving things as they are.`,
        ],
      },
      {
        kind: "chart",
        chart: {
          kind: "ranges",
          id: "alternatives",
          caption: `Saving in the first year by variant, ${building.currency}, 80 % ranges on one scale`,
          unit: "money",
          lines: variants.map(({ name, savingPerYear, proposed }) => ({
            label: name,
            range: savingPerYear,
            strong: proposed,
          })),
        },
      },
      {
        kind: "table",
        id: "alternatives",
        caption: "Variants side by side, a year",
        columns: [
          { head: "Variant", align: "text" },
          { head: `Saving, ${building.currency}`, align: "number" },
          { head: "Electricity", align: "number" },
          { head: "Emissions", align: "number" },
          { head: "Hours outside comfort", align: "number" },
          { head: "Cold reports", align: "number" },
          { head: "Hot reports", align: "number" },
        ],
        rows: variants.map((each) => [
          text(each.proposed ? `${each.name} (proposed)` : each.name),
          moneyRange(each.savingPerYear),
          range(each.electricKwh, "kWh"),
          range(each.emissionsKgCo2, "kg CO₂"),
          number(each.outsideComfort * 100, 1, "%"),
          reportsCell(each, each.coldReportsPerYear),
          reportsCell(each, each.hotReportsPerYear),
        ]),
        total: null,
      },
    ],
  };
}

function reportsCell({ reportsWithheld }: CaseVariant, perYear: number | null): CaseValue {
  if (perYear !== null) return number(perYear, 1);
  return text(reportsWithheld ? "withheld" : "not known");
}
