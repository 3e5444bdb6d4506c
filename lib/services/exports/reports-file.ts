import { readComfortReports } from "../comfort-reports/list";
import type { Context } from "../context";
import { csvText } from "./csv";
import type { ExportedFile } from "./export-building";

const COLUMNS = [
  "reported at (UTC)",
  "zone",
  "desk",
  "thermal sensation vote",
  "preference",
  "heater in use",
  "fan in use",
  "draught",
  "note",
  "sun",
  "dry air",
  "since",
  "felt at",
  "clothing",
  "activity",
  "came by",
  "state",
  "answered at (UTC)",
  "closed at (UTC)",
];

const instant = (atMs: number | null): string | null => (atMs === null ? null : new Date(atMs).toISOString());

/** Comfort reports of a building as a table, for facilities people: all that they see, without reply addresses. */
export function reportsFile(ctx: Context, buildingId: number): ExportedFile {
  const rows = readComfortReports(ctx, buildingId).map((report) => [
    instant(report.reportedAtMs),
    report.zoneCode,
    report.deskCode,
    report.thermalSensation,
    report.preference,
    report.heaterInUse,
    report.fanInUse,
    report.draught,
    report.note,
    report.sun,
    report.dryAir,
    report.sinceWhen,
    report.bodyParts,
    report.clothing,
    report.activity,
    report.origin,
    report.state,
    instant(report.answeredAtMs),
    instant(report.closedAtMs),
  ]);
  return { fileName: "comfort-reports.csv", text: csvText(COLUMNS, rows) };
}
