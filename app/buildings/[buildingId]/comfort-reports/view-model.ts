import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";
import { BODY_WORDS, bodyPartsOf, SINCE_WORDS, type SinceWhen } from "@/lib/comfort-reports/answers";
import type { ComfortReportView } from "@/lib/services/comfort-reports/list";

export const WISH: Record<ComfortReportView["preference"], string> = {
  warmer: "warmer",
  "no-change": "as it is",
  cooler: "cooler",
};

type Said = Pick<ComfortReportView, "heaterInUse" | "fanInUse" | "draught" | "clothing" | "activity" | "note"> &
  Partial<Pick<ComfortReportView, "sun" | "dryAir" | "sinceWhen" | "bodyParts">>;

/** What else the occupant said, in a line. */
export function remarksOf(report: Said): string {
  const labelOf = (list: readonly { id: string; label: string }[], id: string | null) =>
    list.find((each) => each.id === id)?.label.toLowerCase() ?? "";
  const parts = [
    report.sinceWhen ? (SINCE_WORDS[report.sinceWhen as SinceWhen] ?? "") : "",
    bodyPartsOf(report.bodyParts ?? null)
      .map((part) => BODY_WORDS[part])
      .join(", "),
    report.heaterInUse ? "heater in use" : "",
    report.fanInUse ? "fan in use" : "",
    report.draught ? "draught" : "",
    report.sun ? "in the sun" : "",
    report.dryAir ? "dry air" : "",
    labelOf(ENSEMBLES, report.clothing),
    labelOf(ACTIVITIES, report.activity),
    report.note ? `\u201c${report.note}\u201d` : "",
  ];
  return parts.filter(Boolean).join("; ");
}
