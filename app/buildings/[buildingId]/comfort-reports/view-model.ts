import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";
import type { ComfortReportView } from "@/lib/services/comfort-reports/list";

export const WISH: Record<ComfortReportView["preference"], string> = {
  warmer: "warmer",
  "no-change": "as it is",
  cooler: "cooler",
};

/** How many wish it warmer, cooler, as it is: the page's one sentence. */
export function countsLede(reports: readonly Pick<ComfortReportView, "preference" | "zoneId">[]): string {
  if (reports.length === 0) return "What occupants say, with zone, desk and time.";
  const count = (preference: ComfortReportView["preference"]) =>
    reports.filter((report) => report.preference === preference).length;
  const zones = new Set(reports.map((report) => report.zoneId)).size;
  const noun = reports.length === 1 ? "report" : "reports";
  return `${reports.length} ${noun} from ${zones} ${zones === 1 ? "zone" : "zones"}: ${count("warmer")} would like it warmer, ${count("cooler")} cooler, ${count("no-change")} as it is.`;
}

/** What else the occupant said, in a line. */
export function remarksOf(
  report: Pick<ComfortReportView, "heaterInUse" | "fanInUse" | "draught" | "clothing" | "activity" | "note">,
): string {
  const labelOf = (list: readonly { id: string; label: string }[], id: string | null) =>
    list.find((each) => each.id === id)?.label.toLowerCase() ?? "";
  const parts = [
    report.heaterInUse ? "heater in use" : "",
    report.fanInUse ? "fan in use" : "",
    report.draught ? "draught" : "",
    labelOf(ENSEMBLES, report.clothing),
    labelOf(ACTIVITIES, report.activity),
    report.note ? `\u201c${report.note}\u201d` : "",
  ];
  return parts.filter(Boolean).join("; ");
}
