import type { Wandering } from "./level-crossing";

/** Fewest hours that say how a temperature wanders: a working week. Judgement. */
const LEAST_HOURS = 40;

/**
 * How the hourly means of a zone's air wander [°C, NaN where an hour does not count]: mean, standard deviation, and standard
 * deviation of the change from one hour to the next [K/h]. Hourly, since between readings the rounding of a sensor alone
 * shows as much (`roundingRateDeviation`). Null with too few hours.
 */
export function wanderingOf(hourMeansC: Float64Array): Wandering | null {
  let [hours, sum, squares, changes, changeSquares] = [0, 0, 0, 0, 0];
  for (let i = 0; i < hourMeansC.length; i++) {
    const airTempC = hourMeansC[i] as number;
    if (Number.isNaN(airTempC)) continue;
    hours++;
    sum += airTempC;
    const change = airTempC - (hourMeansC[i - 1] ?? Number.NaN);
    if (Number.isNaN(change)) continue;
    changes++;
    changeSquares += change ** 2;
  }
  if (hours < LEAST_HOURS || changes === 0) return null;
  const meanC = sum / hours;
  for (let i = 0; i < hourMeansC.length; i++) {
    const airTempC = hourMeansC[i] as number;
    if (!Number.isNaN(airTempC)) squares += (airTempC - meanC) ** 2;
  }
  return {
    meanC,
    deviationK: Math.sqrt(squares / hours),
    rateDeviationKPerHour: Math.sqrt(changeSquares / changes),
  };
}
