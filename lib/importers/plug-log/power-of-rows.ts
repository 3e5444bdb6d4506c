import type { Finding } from "@/lib/findings/finding";
import type { PlugReadFindingCode } from "./plug-log-read";
import type { PlugQuantity } from "./plug-quantity";
import type { PlugRows } from "./plug-rows";

type PowerOfRows = {
  tsUtcSeconds: Float64Array;
  powerW: Float64Array;
  findings: Finding<PlugReadFindingCode>[];
};

const J_PER_KWH = 3.6e6;

/**
 * Power from each stamp to the next [W]: as read, P = V·I at a power factor of 1, or the energy of the step by its length.
 * A running total gives one value less than it has readings; the energy of a step is that of the step that follows its
 * stamp.
 */
export function powerOfRows(rows: PlugRows, quantity: PlugQuantity, voltageV: number): PowerOfRows {
  const ts = rows.tsUtcSeconds.subarray(0, rows.count);
  const values = rows.values.subarray(0, rows.count);
  const findings: Finding<PlugReadFindingCode>[] = [];
  if (quantity === "energy-counter") return ofCounter(rows, ts, values);
  const powerW = new Float64Array(rows.count);
  let negative = 0;
  for (let i = 0; i < rows.count; i++) {
    const value = values[i] as number;
    if (value < 0) negative += 1;
    const held = Math.max(0, value);
    if (quantity === "power") powerW[i] = held;
    else if (quantity === "current") powerW[i] = held * voltageV;
    else powerW[i] = (held * J_PER_KWH) / stepAt(ts, i);
  }
  if (negative > 0) findings.push({ code: "negative-readings", severity: "caution", evidence: { count: negative } });
  if (quantity === "current")
    findings.push({ code: "power-from-current", severity: "caution", evidence: { voltageV } });
  return { tsUtcSeconds: ts.slice(), powerW, findings };
}

/** Length of the step after a reading [s]; of the last one, that of the step before it. */
function stepAt(ts: Float64Array, i: number): number {
  const from = i + 1 < ts.length ? i : i - 1;
  return (ts[from + 1] as number) - (ts[from] as number);
}

function ofCounter(rows: PlugRows, ts: Float64Array, values: Float64Array): PowerOfRows {
  const powerW = new Float64Array(rows.count);
  let [back, firstLine] = [0, 0];
  for (let i = 0; i + 1 < rows.count; i++) {
    const energyKwh = (values[i + 1] as number) - (values[i] as number);
    if (energyKwh < 0) {
      back += 1;
      firstLine ||= rows.lines[i + 1] as number;
    }
    powerW[i] = energyKwh < 0 ? Number.NaN : (energyKwh * J_PER_KWH) / ((ts[i + 1] as number) - (ts[i] as number));
  }
  // The last reading of a total only ends its last step: it is there to be held for no time.
  powerW[rows.count - 1] = Number.NaN;
  const findings: Finding<PlugReadFindingCode>[] =
    back > 0 ? [{ code: "counter-went-back", severity: "caution", evidence: { count: back, line: firstLine } }] : [];
  return { tsUtcSeconds: ts.slice(), powerW, findings };
}
