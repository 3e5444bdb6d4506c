/**
 * Rounds parts to integers so that they add up to the rounded total: each part is rounded down and the
 * units left over go to the largest fractions (largest-remainder method). Order is kept; parts may be negative.
 */
export function allocateRounded(parts: readonly number[], total?: number): number[] {
  const exact = parts.reduce((sum, part) => sum + part, 0);
  const wanted = Math.round(total ?? exact);
  const floors = parts.map((part) => Math.floor(part));
  let left = wanted - floors.reduce((sum, part) => sum + part, 0);
  const byFraction = parts
    .map((part, index) => ({ index, fraction: part - Math.floor(part) }))
    .sort((a, b) => b.fraction - a.fraction || a.index - b.index);
  const step = Math.sign(left);
  for (let i = 0; left !== 0 && parts.length > 0; i = (i + 1) % parts.length) {
    const order = step > 0 ? i : parts.length - 1 - i;
    const target = byFraction[order] as { index: number };
    floors[target.index] = (floors[target.index] as number) + step;
    left -= step;
  }
  return floors;
}
