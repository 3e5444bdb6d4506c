import { type PostedValues, textOf } from "@/app/_server/form-fields";
import { COMPLAINT_FIELDS, type ComplaintColumns } from "@/lib/importers/complaints/complaint-columns";
import { COMPLAINT_KINDS, COMPLAINT_WORDS, type ComplaintKind } from "@/lib/importers/complaints/complaint-words";
import type { ComplaintReadingRule } from "@/lib/importers/complaints/read-complaints";

/** How to read the table, from what was posted; on the first post all is left to be proposed. */
export function ruleFromForm(values: PostedValues): ComplaintReadingRule {
  const columns: ComplaintColumns = {};
  for (const field of COMPLAINT_FIELDS) {
    const at = textOf(values, `column-${field}`);
    if (at !== "") columns[field] = at === "none" ? null : Number(at);
  }
  const kinds: Record<number, ComplaintKind> = {};
  for (const name of Object.keys(values)) {
    const line = /^kind-(\d+)$/.exec(name)?.[1];
    const kind = COMPLAINT_KINDS.find((each) => each === values[name]);
    if (line && kind) kinds[Number(line)] = kind;
  }
  const order = textOf(values, "dateOrder");
  return {
    columns,
    kinds,
    dateOrder: order === "mdy" || order === "dmy" ? order : null,
    words: {
      cold: wordsOf(values.coldWords) ?? COMPLAINT_WORDS.cold,
      hot: wordsOf(values.hotWords) ?? COMPLAINT_WORDS.hot,
    },
  };
}

const wordsOf = (typed: string | undefined): string[] | undefined =>
  typed
    ?.split(/[,\n]/)
    .map((word) => word.trim())
    .filter(Boolean);
