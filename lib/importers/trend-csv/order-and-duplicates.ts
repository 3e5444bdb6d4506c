import { timeOrder } from "@/lib/order/time-order";

export type Readings = {
  ts: Float64Array;
  values: Float64Array;
  /** Row (index in the file) of each reading. */
  rows: Int32Array;
};

export type Ordered = Readings & {
  /** True when the rows did not run from oldest to newest. */
  reordered: boolean;
  /** Rows left out because an earlier one says the same. */
  identical: number[];
  /** Rows replaced by a later row of the same instant, each with the row that replaced it. */
  conflicting: { replaced: number; keptRow: number }[];
};

/**
 * Readings, given in the order of the file, by time. Of several at one instant the later row is kept; equal ones count
 * once (the first).
 */
export function orderReadings({ ts, values, rows }: Readings): Ordered {
  const n = ts.length;
  let ascending = true;
  let descending = true;
  for (let i = 1; i < n; i++) {
    const step = (ts[i] as number) - (ts[i - 1] as number);
    if (step <= 0) ascending = false;
    if (step >= 0) descending = false;
  }
  if (ascending) return { ts, values, rows, reordered: false, identical: [], conflicting: [] };
  if (descending) {
    return {
      ts: ts.slice().reverse(),
      values: values.slice().reverse(),
      rows: rows.slice().reverse(),
      reordered: true,
      identical: [],
      conflicting: [],
    };
  }
  let reordered = false;
  for (let i = 1; i < n; i++) if ((ts[i] as number) < (ts[i - 1] as number)) reordered = true;
  const order = reordered ? timeOrder(ts) : Uint32Array.from({ length: n }, (_, i) => i);
  const out: Ordered = {
    ts: new Float64Array(n),
    values: new Float64Array(n),
    rows: new Int32Array(n),
    reordered,
    identical: [],
    conflicting: [],
  };
  let kept = -1;
  for (const i of order) {
    const row = rows[i] as number;
    if (kept >= 0 && out.ts[kept] === ts[i]) {
      if (out.values[kept] === values[i]) {
        out.identical.push(row);
        continue;
      }
      out.conflicting.push({ replaced: out.rows[kept] as number, keptRow: row });
    } else {
      kept++;
    }
    out.ts[kept] = ts[i] as number;
    out.values[kept] = values[i] as number;
    out.rows[kept] = row;
  }
  return {
    ...out,
    ts: out.ts.slice(0, kept + 1),
    values: out.values.slice(0, kept + 1),
    rows: out.rows.slice(0, kept + 1),
  };
}
