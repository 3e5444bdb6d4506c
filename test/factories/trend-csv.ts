/** Bytes of a wide trend export: one column a point, quarter hours of local time from 6 July 2026, 08:00 on. */
export function wideCsv(columns: Record<string, readonly (number | string)[]>, more: string[] = []): Uint8Array {
  const names = Object.keys(columns);
  const count = Math.max(...Object.values(columns).map((values) => values.length));
  const rows = Array.from({ length: count }, (_, i) => [stampOf(i), ...names.map((name) => columns[name]?.[i] ?? "")]);
  return bytesOf([["Timestamp", ...names], ...rows].map((row) => row.join(",")).concat(more));
}

export const bytesOf = (lines: readonly string[]): Uint8Array => new TextEncoder().encode(`${lines.join("\n")}\n`);

/** Time of row `i`: year first, so that day and month cannot be mistaken. */
export function stampOf(i: number): string {
  return new Date(Date.UTC(2026, 6, 6, 8) + i * 900_000).toISOString().slice(0, 16).replace("T", " ");
}
