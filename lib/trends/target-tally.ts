import type { TargetExposure } from "./zone-exposure";
import { OCCUPIED_STATES } from "./zone-state";

/** Targets over which a cost is shown as a curve [°C]: what field votes of air-conditioned offices cover. */
export const CURVE_TARGETS_C: readonly number[] = [22, 22.5, 23, 23.5, 24, 24.5, 25];

const STATES = OCCUPIED_STATES.length;

/** Adds up hours and degree-hours below several targets in the one pass over a zone's record. */
export class TargetTally {
  private readonly targets = CURVE_TARGETS_C.map((targetC) => ({
    targetC,
    hours: new Float64Array(STATES),
    kh: new Float64Array(STATES),
    bins: new Map<number, Float64Array>(),
  }));

  /** One interval: its state, zone air [°C], the lower edge of its outdoor bin or null, and its length [h]. */
  add(state: number, zoneAirTempC: number, binC: number | null, hours: number): void {
    for (const { targetC, hours: below, kh, bins } of this.targets) {
      const depthKh = (targetC - zoneAirTempC) * hours;
      if (!(depthKh > 0)) continue;
      below[state] = (below[state] as number) + hours;
      kh[state] = (kh[state] as number) + depthKh;
      if (binC === null) continue;
      let bin = bins.get(binC);
      if (!bin) {
        bin = new Float64Array(STATES);
        bins.set(binC, bin);
      }
      bin[state] = (bin[state] as number) + depthKh;
    }
  }

  /** `binsC` are the lower edges of the exposure's outdoor bins, in its order; null without an outdoor record. */
  result(binsC: readonly number[] | null): TargetExposure[] {
    const none = new Float64Array(STATES);
    return this.targets.map(({ targetC, hours, kh, bins }) => ({
      targetZoneAirTempC: targetC,
      hoursBelowTarget: short(hours),
      overcoolingKh: short(kh),
      binOvercoolingKh: binsC?.map((lowC) => short(bins.get(lowC) ?? none)) ?? null,
    }));
  }
}

/** Seven digits: the results of thousands of zones are kept. */
const short = (values: Float64Array): number[] => Array.from(values, (each) => Number(each.toPrecision(7)));
