import { type CaseSection, text } from "../case-document";
import type { CaseInput } from "../case-input";

/** Usual cautions; this document is not engineering or legal advice. */
export function cautionsSection({ cautions }: CaseInput): CaseSection {
  return {
    id: "cautions",
    title: "Cautions",
    startsPage: false,
    blocks: [
      {
        kind: "paragraph",
        runs: [
          "This document estimates energy, money and comfort. It is not engineering or legal advice: local codes and the judgement of licensed engineers and electricians come first. Ventilation, circuits and heaters are theirs to confirm before anything is changed.",
        ],
      },
      {
        kind: "table",
        id: "cautions",
        caption: "Cautions and where they come from",
        columns: ["Caution", "Source"].map((head) => ({ head, align: "text" })),
        rows: cautions.map((each) => [text(each.text), text(each.source)]),
        total: null,
      },
    ],
  };
}
