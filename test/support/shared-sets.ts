import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import Papa from "papaparse";
import type { PointSeries } from "@/lib/trends/samples";

const FOLDER = fileURLToPath(new URL("../../../shared/data/", import.meta.url));

/** Sets of measured and simulated trends are read where they lie beside the repository; without them their tests are skipped by name. */
export const hasSharedSet = (name: string): boolean => existsSync(`${FOLDER}${name}`);

export type SetColumns = { tsUtcSeconds: number[]; column: (name: string) => number[] };

/** Columns of one file; `utcSeconds` reads the stamp of its first column. Cells that are no number are NaN. */
export function readSet(file: string, utcSeconds: (stamp: string) => number): SetColumns {
  const bytes = readFileSync(`${FOLDER}${file}`);
  const text = (file.endsWith(".gz") ? gunzipSync(bytes) : bytes).toString("utf8");
  const [header = "", ...lines] = text.split(/\r?\n/).filter((line) => line !== "");
  const names = header.split(",");
  const rows = lines.map((line) => line.split(","));
  return {
    tsUtcSeconds: rows.map((row) => utcSeconds(row[0] ?? "")),
    column: (name) => {
      const at = names.indexOf(name);
      if (at < 0) throw new Error(`${file} has no column ${name}`);
      return rows.map((row) => (row[at] === "" ? Number.NaN : Number(row[at])));
    },
  };
}

/** A column as the store would hand it out; readings that are missing and instants that repeat are left out. */
export function seriesOf(
  { tsUtcSeconds }: SetColumns,
  values: readonly number[],
  convert: (value: number) => number,
): PointSeries {
  const kept = new Map<number, number>();
  tsUtcSeconds.forEach((ts, i) => {
    const value = values[i] as number;
    if (!Number.isNaN(value)) kept.set(Math.round(ts), Math.round(convert(value) * 1e4));
  });
  const rows = [...kept].sort(([a], [b]) => a - b);
  return {
    sampling: "interval",
    samples: {
      ts: Float64Array.from(rows, ([ts]) => ts),
      v: Int32Array.from(rows, ([, v]) => v),
      decimals: 4,
    },
  };
}

/** Rows of a table with headings, by heading. */
export function readSharedCsv(file: string): Record<string, string>[] {
  const bytes = readFileSync(`${FOLDER}${file}`);
  const text = (file.endsWith(".gz") ? gunzipSync(bytes) : bytes).toString("utf8");
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}
