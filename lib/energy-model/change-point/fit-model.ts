import type { ChangePointModel, ModelKind } from "./change-point-model";
import { searchOneWing, searchTwoLines } from "./search";
import { searchTwoWings } from "./search-two-wings";
import { SortedSums, type WingedFit } from "./sorted-sums";

/** Energy of intervals of equal length [kWh] with their mean outdoor air temperatures [°C], in the order of time. */
export type EnergyReadings = { outdoorC: Float64Array; energyKwh: Float64Array };

/**
 * The model of a kind with the least squared error over all change points: the global optimum (see `search.ts` and
 * `search-two-wings.ts`).
 * Null when the readings have too few distinct temperatures for the kind. Slopes may come out with either sign;
 * whether a fit may be used is for `qualifyFit` to say. Takes time in n · log n.
 */
export function fitModel(kind: ModelKind, readings: EnergyReadings): ChangePointModel | null {
  if (readings.energyKwh.length < 2) return null;
  return fitSorted(kind, new SortedSums(readings.outdoorC, readings.energyKwh));
}

/** The same from sums that are there already: several kinds of one set of readings share them. */
export function fitSorted(kind: ModelKind, sums: SortedSums): ChangePointModel | null {
  if (kind === "2P") {
    if (sums.count < 2) return null;
    const { level, slope } = sums.line(0, sums.count - 1);
    return { kind, base: sums.meanKwh + level - slope * sums.meanC, slope };
  }
  const fit = searched(kind, sums);
  if (fit === null) return null;
  const base = sums.meanKwh + fit.level;
  const [a, b] = [sums.meanC + fit.a, sums.meanC + fit.b];
  switch (kind) {
    case "3PC":
      return { kind, base, coolingSlope: fit.right, coolingChangeC: b };
    case "3PH":
      return { kind, base, heatingSlope: fit.left, heatingChangeC: a };
    case "4P":
      return { kind, base, leftSlope: -fit.left, rightSlope: fit.right, changeC: b };
    case "5P":
      return {
        kind,
        base,
        heatingSlope: fit.left,
        heatingChangeC: a,
        coolingSlope: fit.right,
        coolingChangeC: b,
      };
  }
}

function searched(kind: Exclude<ModelKind, "2P">, sums: SortedSums): WingedFit | null {
  if (kind === "5P") return searchTwoWings(sums);
  if (kind === "4P") return searchTwoLines(sums);
  return searchOneWing(sums, kind === "3PC" ? "cooling" : "heating");
}
