import { normalPair } from "@/lib/statistics/normal";
import { quantiles } from "@/lib/statistics/quantile";
import { type RandomSource, seededRandom } from "@/lib/statistics/random";
import { triangularDeviation, triangularQuantile } from "@/lib/statistics/triangular";
import type { Range80 } from "@/lib/working/working";
import type { QualifiedFit } from "../change-point/choose-model";
import { changePointSaving, coolingWing } from "../change-point/setpoint-shift";
import { type OutdoorHours, outdoorHours } from "../outdoor-hours";
import type { DayType } from "./meter-model";

/** A value with its range, drawn as a triangle. */
export type Ranged = { value: number; low: number; high: number };

/**
 * What decides how far a setpoint moves the change point: kappa = area · cooling · sensible (reference C-ii). Shares 0 to
 * 1: of the floor area whose setpoint moves, of the coil load of zones that are held by their cooling setpoint, and of
 * sensible heat in the coil load, since moisture does not follow a setpoint. A kappa of 1 is wrong for a building whose
 * minimum airflows are high.
 */
export type SetpointResponse = { area: Ranged; cooling: Ranged; sensible: Ranged };

/** The same with the part of the price of electricity that a saved kWh is worth. */
export type PricedResponse = SetpointResponse & { priced: Ranged };

/** A year of one day type: mean outdoor temperature of its intervals [°C] and the days that each stands for. */
export type TypeYear = { type: DayType; outdoorC: Float64Array; daysEach: Float64Array };

/** The fit of a day type with the year that it is applied to. */
export type TypeFit = { fit: QualifiedFit; year: TypeYear };

export type EnergyPerKelvin = {
  /** Sum over the day types at the stated shares [kWh a year for one kelvin]. */
  savingKwh: number;
  /** Standard error by the fits alone, and with the shares' ranges as well [kWh]. */
  fitErrorKwh: number;
  standardErrorKwh: number;
  range: Range80;
  /** The same times the part of the price that a saved kWh is worth: times a price it is money. */
  pricedRange: Range80;
  /** Share of the year's energy above the change points that the saving is. */
  coolingFraction: number;
  /** Stated kappa. */
  response: number;
  byType: { type: DayType; savingKwh: number; coolingKwh: number; degreeDays: number; degreeDaysAfter: number }[];
};

const DRAWS = 4000;

/**
 * What one kelvin of cooling setpoint is worth a year by the meter: tier 3 evidence for a cost of overcooling. The range
 * is over 4,000 draws with a fixed seed, of the shares as triangles and of each fit's saving as a normal with its
 * standard error. Fits without a cooling change point add nothing; null when none has one. Source: reference C-ii.
 */
export function energyPerKelvin(
  fits: readonly TypeFit[],
  shares: PricedResponse,
  seed: number,
): EnergyPerKelvin | null {
  const cooled = fits
    .filter(({ fit }) => coolingWing(fit.model) !== null)
    .map(({ fit, year }) => ({ fit, type: year.type, days: outdoorHours(year.outdoorC, year.daysEach) }));
  if (cooled.length === 0) return null;
  const response = shares.area.value * shares.cooling.value * shares.sensible.value;
  const byType = cooled.map((each) => ({ type: each.type, ...savingOf(each, response), ...coolingOf(each, response) }));
  const savingKwh = sum(byType.map((each) => each.savingKwh));
  const fitErrorKwh = Math.hypot(...cooled.map((each) => savingOf(each, response).standardErrorKwh));
  const perShare = (share: Ranged): number =>
    share.value > 0 ? (savingKwh / share.value) * triangularDeviation(triangleOf(share)) : 0;
  const standardErrorKwh = Math.hypot(
    fitErrorKwh,
    perShare(shares.area),
    perShare(shares.cooling),
    perShare(shares.sensible),
  );
  const random = seededRandom(seed);
  const draws = Float64Array.from({ length: DRAWS }, () => {
    const drawn = drawResponse(shares, random);
    return sum(cooled.map((each) => drawSaving(savingOf(each, drawn), random)));
  });
  const priced = draws.map((each) => each * triangularQuantile(triangleOf(shares.priced), random()));
  const coolingKwh = sum(byType.map((each) => each.coolingKwh));
  return {
    savingKwh,
    fitErrorKwh,
    standardErrorKwh,
    range: rangeOf(draws),
    pricedRange: rangeOf(priced),
    coolingFraction: coolingKwh > 0 ? savingKwh / coolingKwh : 0,
    response,
    byType: byType.map(({ type, savingKwh, coolingKwh, degreeDays, degreeDaysAfter }) => ({
      type,
      savingKwh,
      coolingKwh,
      degreeDays,
      degreeDaysAfter,
    })),
  };
}

/** A fit with its year: intervals sorted by temperature, each weighted by the days it stands for. */
type CooledYear = { fit: QualifiedFit; days: OutdoorHours };

function savingOf({ fit, days }: CooledYear, riseK: number): { savingKwh: number; standardErrorKwh: number } {
  const saving = changePointSaving(fit, days, riseK);
  if (saving === null) throw new Error("a fit without a cooling change point was let through");
  return saving;
}

/** Energy above the change point and degree-days [K·d] from it, now and with the change point moved. */
function coolingOf(
  { fit, days }: CooledYear,
  riseK: number,
): { coolingKwh: number; degreeDays: number; degreeDaysAfter: number } {
  const wing = coolingWing(fit.model);
  if (wing === null) throw new Error("a fit without a cooling change point was let through");
  const degreeDays = days.degreeHours(wing.changeC);
  return {
    coolingKwh: wing.slopeKwhPerK * degreeDays,
    degreeDays,
    degreeDaysAfter: days.degreeHours(wing.changeC + riseK),
  };
}

function rangeOf(draws: Float64Array): Range80 {
  const [p10, p50, p90] = quantiles(draws, [0.1, 0.5, 0.9]) as [number, number, number];
  return { p10, p50, p90 };
}

const triangleOf = ({ low, value, high }: Ranged) => ({ low, mode: value, high });

const drawResponse = ({ area, cooling, sensible }: SetpointResponse, random: RandomSource): number =>
  [area, cooling, sensible].reduce((product, each) => product * triangularQuantile(triangleOf(each), random()), 1);

const drawSaving = (saving: { savingKwh: number; standardErrorKwh: number }, random: RandomSource): number =>
  saving.savingKwh + saving.standardErrorKwh * normalPair(random)[0];

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);
