import { type CaseSection, text } from "../case-document";
import type { CaseInput } from "../case-input";

/** How it will be told whether the change did what this document says. */
export function verificationSection({ verification }: CaseInput): CaseSection {
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
    ],
  };
}
