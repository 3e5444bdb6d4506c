import { type CaseSection, money, text } from "../case-document";
import type { CaseFinance } from "../case-finance";
import type { CaseInput } from "../case-input";

/** Widest swings that a picture shows; the table has all. */
const LINES_SHOWN = 10;

/**
 * What moves the figures most: one input at a time, all others at their stated value. Drawn inputs go to the P10 and P90 of
 * their draws, as values that are worked out from several have no ends of their own; chosen ones to their ends.
 */
export function sensitivitySection({ tornado, saving, building }: CaseInput, finance: CaseFinance): CaseSection {
  const columns = (what: string) => [
    { head: "Input", align: "text" as const },
    { head: `${what} at its low`, align: "number" as const },
    { head: "at its high", align: "number" as const },
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
          caption: `Saving in the first year with one input at the P10 and at the P90 of its draws, ${building.currency}; the ${LINES_SHOWN} widest`,
          base: saving.stated,
          lines: tornado.slice(0, LINES_SHOWN),
        },
      },
      {
        kind: "table",
        id: "tornado",
        caption: `Saving in the first year, ${building.currency}; low and high are the P10 and P90 of the input's draws`,
        columns: columns("Saving"),
        rows: rowsOf(tornado),
        total: null,
      },
      {
        kind: "table",
        id: "policy",
        caption: `Net present value with what is chosen or lasts, ${building.currency}; low and high are the ends of the range`,
        columns: columns("Net present value"),
        rows: rowsOf(finance.policy),
        total: null,
      },
    ],
  };
}
