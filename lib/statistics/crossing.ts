/** Where a function that never falls passes `level` between two numbers, to 1e-12 of their distance. */
export function crossingOf(rising: (x: number) => number, level: number, low: number, high: number): number {
  let from = low;
  let to = high;
  for (let step = 0; step < 60 && to - from > 1e-12 * (high - low); step++) {
    const middle = (from + to) / 2;
    if (rising(middle) < level) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
