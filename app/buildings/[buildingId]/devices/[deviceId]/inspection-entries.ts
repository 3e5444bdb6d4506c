import { choiceOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import type { InspectionInput } from "@/lib/services/inspections/record";

/** Name of an item's field, as the use-case names it in its messages. */
export const itemField = (itemId: string, field: "outcome" | "note" | "dueOn"): string => `items.${itemId}.${field}`;

export function inspectionFromForm(values: PostedValues): InspectionInput {
  const ids = Object.keys(values).flatMap((key) => /^items\.(.+)\.outcome$/.exec(key)?.[1] ?? []);
  return {
    checklist: choiceOf(values, "checklist"),
    inspectedOn: textOf(values, "inspectedOn"),
    nextDueOn: textOf(values, "nextDueOn") || null,
    note: textOf(values, "note"),
    items: Object.fromEntries(
      ids.map((id) => [
        id,
        {
          outcome: choiceOf<InspectionInput["items"][string]["outcome"]>(values, itemField(id, "outcome")),
          note: textOf(values, itemField(id, "note")),
          dueOn: textOf(values, itemField(id, "dueOn")) || null,
        },
      ]),
    ),
  };
}
