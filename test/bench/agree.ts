/** Two contenders have to give the same answer, or their times are not worth comparing. */
export function agree(what: string, a: unknown, b: unknown, tolerance = 0): void {
  const close = typeof a === "number" && typeof b === "number" && Math.abs(a - b) <= tolerance;
  if (!close && a !== b) throw new Error(`${what} do not agree: ${String(a)} and ${String(b)}`);
}
