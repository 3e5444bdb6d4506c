import type { StateExposure, ZoneExposure } from "./zone-exposure";
import { OCCUPIED_STATES, type OccupiedState } from "./zone-state";

/**
 * A zone's exposure against another target than the one it was worked out for, from the degree-hours that were added up
 * beside it; null for a target that was not among them. Hours by state are those of the exposure: a target changes what
 * counts as too cold, not what the controller did.
 */
export function exposureAtTarget(exposure: ZoneExposure, targetC: number): ZoneExposure | null {
  if (exposure.targetZoneAirTempC === targetC) return exposure;
  const other = exposure.byTarget.find((each) => each.targetZoneAirTempC === targetC);
  if (!other) return null;
  return {
    ...exposure,
    targetZoneAirTempC: targetC,
    byState: perState(
      (state, k): StateExposure => ({
        ...exposure.byState[state],
        hoursBelowTarget: other.hoursBelowTarget[k] ?? 0,
        overcoolingKh: other.overcoolingKh[k] ?? 0,
      }),
    ),
    byOutdoorBin:
      exposure.byOutdoorBin?.map((bin, i) => ({
        ...bin,
        byState: perState((state, k) => ({
          hours: bin.byState[state].hours,
          overcoolingKh: other.binOvercoolingKh?.[i]?.[k] ?? 0,
        })),
      })) ?? null,
  };
}

const perState = <T>(of: (state: OccupiedState, place: number) => T): Record<OccupiedState, T> =>
  Object.fromEntries(OCCUPIED_STATES.map((state, k) => [state, of(state, k)])) as Record<OccupiedState, T>;
