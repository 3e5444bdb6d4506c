import { type PostedValues, textOf } from "@/app/_server/form-fields";
import type { ComplaintColumns, ComplaintField } from "@/lib/importers/complaints/complaint-columns";
import type { ComplaintKind } from "@/lib/importers/complaints/complaint-words";
import { type PastReportsTable, usualComplaintWords } from "@/lib/services/comfort-reports/import-past";

const FIELDS: readonly ComplaintField[] = ["date", "time", "zone", "desk", "text"];
const KINDS: readonly ComplaintKind[] = ["cold", "hot", "other"];

/** How to read the table, from what was posted; on the first post all is left to be proposed. */
export function ruleFromForm(values: PostedValues): PastReportsTable["rule"] {
  const columns: ComplaintColumns = {};
  for (const field of FIELDS) {
    const at = textOf(values, `column-${field}`);
    if (at !== "") columns[field] = at === "none" ? null : Number(at);
  }
  const kinds: Record<number, ComplaintKind> = {};
  for (const name of Object.keys(values)) {
    const line = /^kind-(\d+)$/.exec(name)?.[1];
    const kind = KINDS.find((each) => each === values[name]);
    if (line && kind) kinds[Number(line)] = kind;
  }
  const usual = usualComplaintWords();
  const order = textOf(values, "dateOrder");
  return {
    columns,
    kinds,
    dateOrder: order === "mdy" || order === "dmy" ? order : null,
    words: {
      cold: wordsOf(values.coldWords) ?? usual.cold,
      hot: wordsOf(values.hotWords) ?? usual.hot,
    },
  };
}

const wordsOf = (typed: string | undefined): string[] | undefined =>
  typed
    ?.split(/[,\n]/)
    .map((word) => word.trim())
    .filter(Boolean);
