import { LineList } from "./line-list";
import type { Readings } from "./order-and-duplicates";
import type { FileUnit } from "./trend-file";
import type { NameAndUnit } from "./units";

/** A point while its file is being read: readings in file order, and what was noticed about its cells. */
export type PointDraft = NameAndUnit & {
  column: number | null;
  section: number;
  kind: "numeric" | "state";
  nameFromFile: boolean;
  unitFromValues: boolean;
  unit: FileUnit | null;
  /** A number point of nothing but 0 and 1 without a unit: a state by its values. */
  chunks: Readings[];
  /** Instants of all rows of the point, also those without a reading. */
  presence: Float64Array[];
  sparse: boolean;
  lists: Record<PointNotice, LineList>;
  /** Values left out as sentinels or implausible, each once; at most six. */
  oddValues: Record<"sentinel-value" | "implausible-value", Set<number>>;
  intervalSeconds: number | null;
};

export const POINT_NOTICES = [
  "value-missing",
  "status-bad",
  "status-flagged",
  "sentinel-value",
  "implausible-value",
] as const;
export type PointNotice = (typeof POINT_NOTICES)[number];

export const noticeLists = (): Record<PointNotice, LineList> => ({
  "value-missing": new LineList(),
  "status-bad": new LineList(),
  "status-flagged": new LineList(),
  "sentinel-value": new LineList(),
  "implausible-value": new LineList(),
});

/** All chunks of a point as one, in file order. */
export function joinReadings(chunks: readonly Readings[]): Readings {
  if (chunks.length === 1) return chunks[0] as Readings;
  const n = chunks.reduce((sum, chunk) => sum + chunk.ts.length, 0);
  const joined: Readings = { ts: new Float64Array(n), values: new Float64Array(n), rows: new Int32Array(n) };
  let at = 0;
  for (const chunk of chunks) {
    joined.ts.set(chunk.ts, at);
    joined.values.set(chunk.values, at);
    joined.rows.set(chunk.rows, at);
    at += chunk.ts.length;
  }
  return joined;
}

export function joinInstants(parts: readonly Float64Array[]): Float64Array {
  if (parts.length === 1) return parts[0] as Float64Array;
  const joined = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}
