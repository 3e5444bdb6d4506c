import { allocateRounded } from "@/lib/money/allocate";
import { currencyDecimals } from "@/lib/money/money";
import { type CaseSection, money, text } from "../case-document";
import type { CaseInput } from "../case-input";

/** Of what the saving is made. Printed parts add up to the printed total, to the minor unit. */
export function componentsSection({ parts, saving, building }: CaseInput): CaseSection {
  const minor = 10 ** currencyDecimals(building.currency);
  const cents = allocateRounded(
    parts.map(({ statedPerYear }) => statedPerYear * minor),
    saving.stated * minor,
  );
  const positive = parts.filter(({ statedPerYear }) => statedPerYear > 0);
  return {
    id: "components",
    title: "Components of the saving",
    startsPage: false,
    blocks: [
      ...(positive.length > 0
        ? [
            {
              kind: "chart" as const,
              chart: {
                kind: "parts" as const,
                id: "parts",
                caption: `Saving by component, ${building.currency} in the first year, stated values`,
                unit: "money",
                parts: parts.map(({ label, statedPerYear }) => ({ label, value: statedPerYear })),
              },
            },
          ]
        : []),
      {
        kind: "table",
        id: "components",
        caption: `Saving by component in the first year, ${building.currency}, stated values`,
        columns: [
          { head: "Component", align: "text" },
          { head: `${building.currency} a year`, align: "number" },
        ],
        rows: parts.map(({ label }, at) => [text(label), money((cents[at] as number) / minor, "minor")]),
        total: [text("together"), money(cents.reduce((sum, each) => sum + each, 0) / minor, "minor")],
      },
    ],
  };
}
