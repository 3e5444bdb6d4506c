import { LABEL_SHEETS, type LabelSheet, labelSheetById, labelsASheet } from "@/lib/services/labels/label-sheets";
import { isLabelKind, type LabelChoice } from "@/lib/services/labels/read";

export type LabelQuery = Partial<Record<"kind" | "floor" | "only" | "sheet" | "first", string>>;

/** What the address asks for; anything that is not known reads as the first of its sort. */
export function choiceOfQuery(query: LabelQuery): { choice: LabelChoice; sheet: LabelSheet; skip: number } {
  const kind = query.kind ?? "";
  const sheet = labelSheetById(query.sheet ?? "") ?? (LABEL_SHEETS[0] as LabelSheet);
  const first = Math.floor(Number(query.first ?? "1"));
  return {
    choice: {
      kind: isLabelKind(kind) ? kind : "devices",
      floor: query.floor ?? "",
      only: (query.only ?? "").split(/[,;\s]+/).filter((code) => code !== ""),
    },
    sheet,
    skip: first >= 1 && first <= labelsASheet(sheet) ? first - 1 : 0,
  };
}
