import type { ThermalCondition } from "./thermal-condition";
import { convectionW, saturationTorr, skinAfterAnHour } from "./two-node";

/**
 * Standard effective temperature [°C]: that of a plain room at 50 % humidity with still air in which a person dressed for
 * the activity would lose the same heat from the same skin. ASHRAE 55-2017, Appendix D. An older edition stirs the air by
 * activity otherwise and gives up to 4 K more at 2 met.
 */
export function standardEffectiveTempC(
  condition: ThermalCondition,
  { countsActivity = true }: { countsActivity?: boolean } = {},
): number {
  const { metabolicRateMet: met, externalWorkMet = 0 } = condition;
  const { skinTempC, heatW, wettedness, radiativeW } = skinAfterAnHour(condition, countsActivity);
  const convective = convectionW(0, met, countsActivity);
  const total = convective + radiativeW;
  const clo = 1.52 / (met - externalWorkMet + 0.6944) - 0.1835;
  const clothing = 0.155 * clo;
  const area = 1 + 0.25 * clo;
  const efficiency = 1 / (1 + 0.155 * area * total * clo);
  const permeation = ((0.45 * convective) / total) * ((1 - efficiency) / (convective / total - efficiency * 0.45));
  const dryW = 1 / (1 / (area * total) + clothing);
  const wetW = 1 / (1 / (2.2 * area * convective) + clothing / (2.2 * permeation));
  const skinTorr = saturationTorr(skinTempC);
  const short = (setC: number): number =>
    heatW - dryW * (skinTempC - setC) - wettedness * wetW * (skinTorr - 0.5 * saturationTorr(setC));

  let low = -50;
  let high = 80;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (short(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
