import { standardEffectiveTempC } from "./standard-effective-temperature";
import type { ThermalCondition } from "./thermal-condition";
import { STILL_AIR_MPS } from "./two-node";

/** What moving air is worth [K]. The two ways of counting one's own movement differ; neither is settled. */
export type CoolingEffect = { lowK: number; highK: number };

/** Searched up to here [K]. */
const MOST_K = 40;

/**
 * Cooling effect of elevated air speed: the kelvins to take off air and surfaces so that still air feels the same (equal
 * standard effective temperature). ASHRAE 55. The high end leaves out the air that one's own movement stirs, since the
 * relative speed has it already, as public implementations do; the low end is by the plain temperature. They are equal
 * at 1.0 met, and 0.9 K apart at 1.2 met.
 */
export function coolingEffect(condition: ThermalCondition): CoolingEffect {
  const high = effectK(condition, false);
  const low = effectK(condition, true);
  return { lowK: Math.min(low, high), highK: Math.max(low, high) };
}

/** 0 where the air is no faster than the one about a person at rest, or where its speed changes nothing yet. */
function effectK(condition: ThermalCondition, countsActivity: boolean): number {
  if (condition.relAirSpeedMps <= STILL_AIR_MPS) return 0;
  const felt = standardEffectiveTempC(condition, { countsActivity });
  const stillWarmer = (lessK: number): boolean =>
    standardEffectiveTempC(
      {
        ...condition,
        airTempC: condition.airTempC - lessK,
        radiantTempC: condition.radiantTempC - lessK,
        relAirSpeedMps: STILL_AIR_MPS,
      },
      { countsActivity },
    ) > felt;
  if (!stillWarmer(1e-4)) return 0;
  let low = 0;
  let high = MOST_K;
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (stillWarmer(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
