import { quantiles } from "@/lib/statistics/quantile";
import { stepHours } from "./grid";
import { AT_MINIMUM_FACTOR, DAMPER_MINIMUM_PCT } from "./state";
import type { ZoneGrids } from "./zone-grids";

const LEAST_HOURS = 5;
/** A damper further open than this at minimum airflow is short of duct pressure, not at a minimum. Judgement, no source. */
const HIGHEST_MINIMUM_PCT = 60;
/** Half the width of a damper loop's hunting [%]. Judgement, no source. */
const MARGIN_PCT = 3;

/**
 * Damper position [%] up to which this box counts as commanded to minimum: where it usually stands in occupied
 * intervals with airflow at the minimum, plus 3: a box whose minimum is at 17 % is not at it at 30 %. The general 35 % where
 * there are fewer than five such hours, or where it stands wider than 60 %.
 */
export function learnDamperMinimum(grids: ZoneGrids, minimumAirflowM3ps: number | null): number {
  const { airflowM3ps, damperPct, occupied } = grids;
  if (!airflowM3ps || !damperPct || minimumAirflowM3ps === null) return DAMPER_MINIMUM_PCT;
  const atMinimum = damperPct.filter((damper, i) => {
    const airflow = airflowM3ps[i] as number;
    return (
      occupied[i] === 1 &&
      !Number.isNaN(damper) &&
      airflow <= AT_MINIMUM_FACTOR * minimumAirflowM3ps &&
      airflow >= 0.5 * minimumAirflowM3ps
    );
  });
  if (atMinimum.length * stepHours(grids.grid) < LEAST_HOURS) return DAMPER_MINIMUM_PCT;
  const usual = quantiles(atMinimum, [0.5])[0] as number;
  return usual > HIGHEST_MINIMUM_PCT ? DAMPER_MINIMUM_PCT : usual + MARGIN_PCT;
}
