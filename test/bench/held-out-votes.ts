import { type Fit, votesByBuilding } from "./data/votes-by-building";
import { line, plain } from "./targets";

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
const STEPS = 61;

/** Share at a temperature, averaged over buildings as the fit says that they differ. */
function meanShare({ a, b, spreadA, spreadB }: Fit, airTempC: number): number {
  const x = airTempC - 23;
  const deviation = Math.hypot(spreadA, spreadB * x);
  let [sum, weights] = [0, 0];
  for (let i = 0; i < STEPS; i++) {
    const z = -4 + (8 * i) / (STEPS - 1);
    const weight = Math.exp(-0.5 * z * z);
    sum += weight * logistic(a + b * x + deviation * z);
    weights += weight;
  }
  return sum / weights;
}

/** Whether a building's own share lies within the 90 % interval that a building may have, by 1 K bin. */
function withinSpread(fit: Fit, airTempC: number, votes: number, seen: number): boolean {
  const x = airTempC - 23;
  const expected = meanShare(fit, airTempC);
  const deviation = Math.hypot(fit.spreadA, fit.spreadB * x, fit.meanErrorA, fit.meanErrorB * x);
  const half =
    1.645 * Math.hypot(deviation * expected * (1 - expected), Math.sqrt((expected * (1 - expected)) / votes));
  return Math.abs(seen / votes - expected) <= half;
}

/** Predicted against voted shares of buildings that the fit had not seen, five folds by building. */
export function calibrationTable(): void {
  const { buildings, fits } = votesByBuilding();
  line("votes of held-out buildings: season, wish, air °C, votes, predicted %, voted %");
  for (const season of ["summer", "winter"] as const)
    for (const [column, wish] of [
      [2, "warmer"],
      [3, "cooler"],
    ] as const) {
      let [within, cells] = [0, 0];
      for (let airTempC = 20; airTempC <= 26; airTempC++) {
        let [votes, seen, predicted] = [0, 0, 0];
        for (const building of buildings[season]) {
          const fit = fits[season][wish].folds[building.fold] as Fit;
          const own = building.cells.filter(([temp]) => Math.round(temp - 0.01) === airTempC);
          const [n, k] = own.reduce(([m, s], cell) => [m + cell[1], s + cell[column]], [0, 0]);
          predicted += own.reduce((sum, cell) => sum + cell[1] * meanShare(fit, cell[0]), 0);
          votes += n;
          seen += k;
          if (n >= 10) {
            cells++;
            if (withinSpread(fit, airTempC, n, k)) within++;
          }
        }
        if (votes > 0)
          line(
            `  ${season} ${wish} ${airTempC} ${votes} ${plain((100 * predicted) / votes)} ${plain((100 * seen) / votes)}`,
          );
      }
      line(
        `  ${season} ${wish}: ${within} of ${cells} shares of a building with 10 votes or more lie within the 90 % interval`,
      );
    }
}
