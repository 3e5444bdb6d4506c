import { type CaseBlock, type CaseSection, text } from "../case-document";
import type { CaseInput } from "../case-input";

/** How it will be told whether the change did what this document says. */
export function verificationSection({ verification, trialWeeks }: CaseInput): CaseSection {
  return {
    id: "verification",
    title: "Verification plan",
    startsPage: false,
    blocks: [
      {
        kind: "table",
        id: "verification",
        caption: "Trial and proof",
        columns: ["Step", "How", "When"].map((head) => ({ head, align: "text" })),
        rows: verification.map(({ step, how, when }) => [text(step), text(how), text(when)]),
        total: null,
      },
      ...calendarBlocks(trialWeeks),
    ],
  };
}

function calendarBlocks(weeks: CaseInput["trialWeeks"]): CaseBlock[] {
  if (weeks.length === 0) return [];
  return [
    {
      kind: "table",
      id: "trial-weeks",
      caption: "Calendar of alternate weeks, in the order that was drawn",
      columns: ["Week", "Pair", "From", "To", "Setting"].map((head) => ({ head, align: "text" })),
      rows: weeks.map(({ week, pair, from, to, setting }) => [
        text(String(week)),
        text(String(pair)),
        text(from),
        text(to),
        text(setting),
      ]),
      total: null,
    },
  ];
}
