import { isAscending, timeOrder } from "@/lib/order/time-order";

/** Rows of one series in file order, times in any order and perhaps repeated. */
export type Rows = { ts: Float64Array; v: Int32Array };

/**
 * The rows by ascending time, each time once: the later row of the file wins. `repeated` counts the rows that came at a
 * time given before, by whether they gave the value that stood. Rows that are in order already (which `ascends` says when
 * it is known) are returned as they are.
 */
export function orderRows(
  rows: Rows,
  ascends = isAscending(rows.ts),
): Rows & { repeated: { same: number; changed: number } } {
  const repeated = { same: 0, changed: 0 };
  if (ascends) return { ts: rows.ts, v: rows.v, repeated };
  const order = timeOrder(rows.ts);
  const ts = new Float64Array(order.length);
  const v = new Int32Array(order.length);
  let kept = 0;
  for (const index of order) {
    const time = rows.ts[index] as number;
    const value = rows.v[index] as number;
    if (kept > 0 && ts[kept - 1] === time) {
      kept--;
      repeated[v[kept] === value ? "same" : "changed"]++;
    }
    ts[kept] = time;
    v[kept] = value;
    kept++;
  }
  return { ts: ts.subarray(0, kept), v: v.subarray(0, kept), repeated };
}
