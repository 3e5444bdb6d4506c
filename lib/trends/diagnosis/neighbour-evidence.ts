import { quantiles } from "@/lib/statistics/quantile";
import type { ZoneStatistics } from "../zone-statistics";
import type { NeighbourEvidence } from "./zone-evidence";

/** Comparison values for one zone from the statistics of all zones of its building (its own are left out). */
export function neighbourEvidence(zoneId: number, all: readonly ZoneStatistics[]): NeighbourEvidence {
  const others = all.filter((each) => each.zoneId !== zoneId);
  const setbacks = others.flatMap((each) => (each.coolingSetbackK === null ? [] : [each.coolingSetbackK]));
  return {
    zones: others.length,
    medianCoolingSetbackK: setbacks.length > 0 ? (quantiles(setbacks, [0.5])[0] as number) : null,
    stepDownsUtcSeconds: others.flatMap((each) =>
      each.coolingSetpoint?.stepDown ? [each.coolingSetpoint.stepDown.atUtcSeconds] : [],
    ),
  };
}
