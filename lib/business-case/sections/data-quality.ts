import { type CaseSection, text } from "../case-document";
import type { CaseInput } from "../case-input";

const WEIGHT = { disqualifies: "disqualifies", caution: "caution", note: "note" } as const;

/** What is known to be wrong or missing in the data that the figures rest on. */
export function dataQualitySection({ dataRemarks }: CaseInput): CaseSection {
  return {
    id: "data-quality",
    title: "Data quality",
    startsPage: false,
    blocks: [
      dataRemarks.length === 0
        ? { kind: "paragraph", runs: ["Nothing was remarked about the data at issue."] }
        : {
            kind: "table",
            id: "data-remarks",
            caption: "Remarks about the data, as they stood at issue",
            columns: ["Weight", "What", "What to do"].map((head) => ({ head, align: "text" })),
            rows: dataRemarks.map(({ severity, what, action }) => [text(WEIGHT[severity]), text(what), text(action)]),
            total: null,
          },
    ],
  };
}
