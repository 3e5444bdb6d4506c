import { bytesOf } from "./trend-csv";

/** A monthly export with day and month in doubt: quarter hours of the given days, all of them 12 or less. */
export function monthlyCsv(
  month: number,
  columns: Record<string, readonly number[]>,
  { delimiter = ",", written = (day: string) => day }: { delimiter?: string; written?: (day: string) => string } = {},
): Uint8Array {
  const names = Object.keys(columns);
  const count = Math.max(...Object.values(columns).map((values) => values.length));
  const two = (value: number) => String(value).padStart(2, "0");
  const rows = Array.from({ length: count }, (_, i) => [
    `${written(`${two(month)}/05/2026`)} ${two(8 + (i >> 2))}:${two((i & 3) * 15)}`,
    ...names.map((name) => String(columns[name]?.[i] ?? "")),
  ]);
  return bytesOf([["Timestamp", ...names], ...rows].map((row) => row.join(delimiter)));
}

/** Zone air and cooling setpoint of zone 2-14 without units: the file asks for the date order and the unit. */
export const ROOM = { "VAV-2-14 ZN-T": [72, 71.5, 71, 72, 71.5, 71], "VAV-2-14 CLG-SP": [74, 74, 74, 74, 74, 74] };
