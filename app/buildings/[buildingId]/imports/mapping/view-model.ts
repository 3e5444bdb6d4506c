import type { MappingTask } from "@/lib/services/trend-imports/mapping";
import type { MappingLine } from "@/lib/services/trend-imports/mapping-lines";
import { formatLocal } from "@/lib/time/format";
import type { PointKind } from "@/lib/trends/point-kind";
import { formatNumber } from "@/lib/units/format";

export const KIND_LABEL: Record<PointKind, string> = {
  "zone-air-temp": "zone air temperature",
  "cooling-setpoint": "cooling setpoint",
  "heating-setpoint": "heating setpoint",
  airflow: "airflow",
  "airflow-setpoint": "airflow setpoint",
  "damper-position": "damper position",
  "reheat-valve": "reheat valve or output",
  "discharge-air-temp": "discharge air temperature",
  occupancy: "occupancy",
  "supply-air-temp": "supply air temperature (air handler)",
  "outdoor-air-temp": "outdoor air temperature",
};

export const SKIP = "skip";

/** A point as the mapping table shows it, with what stands in its fields to begin with. */
export type MappingRow = {
  name: string;
  /** Position in the form; field names carry it, since a point's name may hold anything. */
  index: number;
  what: string;
  zoneId: string;
  unit: string;
  unitChoices: string[];
  why: string;
  holds: string;
};

export function mappingRow(line: MappingLine, index: number, timeZone: string): MappingRow {
  const { known, proposal, summary, unitAsk, leftOutBefore } = line;
  const settled = known ?? (proposal.kind ? { kind: proposal.kind, zoneId: proposal.zoneId } : null);
  const unitBefore = unitAsk?.choices.find((unit) => unit === known?.fileUnit);
  return {
    name: line.name,
    index,
    what: leftOutBefore || (!settled && proposal.skip) ? SKIP : (settled?.kind ?? ""),
    zoneId: settled?.zoneId ? String(settled.zoneId) : "",
    unit: unitAsk ? (unitBefore ?? unitAsk.proposal ?? "") : (summary.unitAsWritten ?? ""),
    unitChoices: unitAsk?.choices ?? [],
    why: leftOutBefore
      ? "left out before"
      : known
        ? "as mapped before"
        : `${proposal.confidence} confidence: ${proposal.reason}`,
    holds: holdsWords(line, timeZone),
  };
}

export const mappingLines = (task: MappingTask, timeZone: string): MappingRow[] =>
  task.lines.map((line, index) => mappingRow(line, index, timeZone));

/** Readings, span, first and last value of a point. */
function holdsWords({ summary }: MappingLine, timeZone: string): string {
  const count = `${formatNumber(summary.readings, { decimals: 0 })} readings`;
  if (!summary.firstUtc || !summary.lastUtc) return count;
  const day = (utc: string) => formatLocal(Date.parse(utc), timeZone, "date");
  return `${count}, ${day(summary.firstUtc)} to ${day(summary.lastUtc)}; first ${summary.first}, last ${summary.last}`;
}

export function mappingLede(task: { lines: readonly MappingLine[]; waiting: readonly unknown[] }): string {
  const files = task.waiting.length === 1 ? "One file holds" : `${task.waiting.length} files hold`;
  const points = task.lines.length === 1 ? "one point" : `${task.lines.length} points`;
  const known = task.lines.filter((line) => line.known).length;
  return `${files} ${points}${known > 0 ? `, ${known} of them mapped before` : ""}. Check what is proposed; nothing is stored before you confirm.`;
}
