import { type CaseSection, money, text } from "../case-document";
import type { CaseFinance } from "../case-finance";
import type { CaseInput } from "../case-input";

/** Widest swings that a picture shows; the table has all. */
const LINES_SHOWN = 10;

/** What moves the figures most: one input at a time at its low and high end, all others at their stated value. */
export function sensitivitySection({ tornado, saving, building }: CaseInput, finance: CaseFinance): CaseSection {
  const columns = (what: string) => [
    { head: "Input", align: "text" as const },
    { head: `${what} with it at its low end`, align: "number" as const },
    { head: "at its high end", align: "number" as const },
  ];
  const rowsOf = (lines: CaseInput["tornado"]) =>
    lines.map(({ label, lowTotal, highTotal }) => [text(label), money(lowTotal), money(highTotal)]);
  return {
    id: "sensitivity",
    title: "Sensitivity",
    startsPage: true,
    blocks: [
      {
        kind: "chart",
        chart: {
          kind: "tornado",
          id: "tornado",
          caption: `Saving in the first year with one input at its ends, ${building.currency}; ${LINES_SHOWN} widest`,
          base: saving.stated,
          lines: tornado.slice(0, LINES_SHOWN),
        },
      },
      {
        kind: "table",
        id: "tornado",
        caption: `Saving in the first year, ${building.currency}`,
        columns: columns("Saving"),
        rows: rowsOf(tornado),
        total: null,
      },
      {
        kind: "table",
        id: "policy",
        caption: `Net present value, ${building.currency}`,
        columns: columns("Net present value"),
        rows: rowsOf(finance.policy),
        total: null,
      },
    ],
  };
}
