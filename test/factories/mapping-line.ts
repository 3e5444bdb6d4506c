import type { StatedLine } from "@/lib/services/trend-imports/mapping";
import { lineStateOf, type MappingEntry } from "@/lib/services/trend-imports/mapping-entry";
import type { MappingLine } from "@/lib/services/trend-imports/mapping-lines";

/** A point of zone 5 whose unit is asked, as the mapping page has it. */
export function mappingLine(changes: Partial<MappingLine> = {}, entered?: MappingEntry): StatedLine {
  const name = changes.name ?? "VAV-2-14 ZN-T";
  const line: MappingLine = {
    name,
    runIds: [1],
    summary: {
      name,
      kind: "numeric",
      unitAsWritten: null,
      unit: null,
      sampling: "interval",
      readings: 12_000,
      missing: 0,
      firstUtc: "2026-07-06T02:00:00Z",
      lastUtc: "2026-07-08T13:00:00Z",
      first: 72.1,
      last: 71,
      sum: 858_000,
      spot: [
        { utc: "2026-07-07T02:00:00Z", value: 71.5 },
        { utc: "2026-07-07T12:00:00Z", value: 70.9 },
      ],
    },
    proposal: { kind: "zone-air-temp", skip: false, confidence: "high", reason: "by its name", zoneId: 5 },
    known: null,
    leftOutBefore: false,
    continues: null,
    unitAsk: { what: "unit", choices: ["degF", "degC", "other"], proposal: "degF", question: "Which?" },
    ...changes,
  };
  return { ...line, state: lineStateOf(line, entered, null), differs: null };
}
