/**
 * Years after which a change is undone on average, of which the share `fraction` of the first year is in force:
 * L · (1 - exp(-1 / L)) = fraction, which rises steadily with L. By bisection between a day and a thousand years.
 */
export function lifeOfFirstYear(fraction: number): number {
  let [low, high] = [1 / 365, 1000];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (middle * -Math.expm1(-1 / middle) < fraction) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
