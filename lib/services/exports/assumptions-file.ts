import { ALL_ASSUMPTIONS } from "@/lib/assumptions/all-assumptions";
import { resolveAssumptions } from "../assumptions/resolve";
import type { Context } from "../context";
import { csvText } from "./csv";
import type { ExportedFile } from "./export-building";

const COLUMNS = [
  "assumption",
  "label",
  "unit",
  "value",
  "low",
  "high",
  "origin",
  "default value",
  "default low",
  "default high",
  "reason",
  "entered by",
  "entered at (UTC)",
  "source",
  "confidence",
  "url",
];

/** Every assumption as it applies to a building, with its default beside a value of the building's own. */
export function assumptionsFile(ctx: Context, buildingId: number): ExportedFile {
  const defaults = new Map(ALL_ASSUMPTIONS.map((each) => [each.id, each]));
  const rows = resolveAssumptions(ctx, buildingId).map((each) => {
    const { id, label, unit, value, low, high, origin, override, source } = each;
    const usual = defaults.get(id) ?? each;
    const { title, edition, place, year, confidence, url } = source;
    return [
      id,
      label,
      unit,
      value,
      low,
      high,
      origin,
      usual.value,
      usual.low,
      usual.high,
      override?.reason ?? null,
      override?.enteredBy ?? null,
      override ? new Date(override.enteredAtMs).toISOString() : null,
      [title, edition, place, year].filter(Boolean).join(", "),
      confidence,
      url ?? null,
    ];
  });
  return { fileName: "assumptions.csv", text: csvText(COLUMNS, rows) };
}
