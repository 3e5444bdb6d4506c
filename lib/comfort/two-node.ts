import type { ThermalCondition } from "./thermal-condition";

/**
 * Person of the two-node model: a core and a skin of one temperature each (Gagge, Fobelets & Berglund 1986, with the
 * constants of the 2017 edition of ASHRAE 55 as public implementations have them). Pressures in torr, as there.
 */
const PERSON = {
  massKg: 69.9,
  skinAreaM2: 1.8258,
  skinNeutralC: 33.7,
  coreNeutralC: 36.8,
  bodyNeutralC: 36.49,
  bloodFlowNeutral: 6.3,
  skinShareAtFirst: 0.1,
} as const;
const MET_W = 58.2;
const STEFAN = 5.6697e-8;
/** Of clothing, and of the surface of a person who stands: the standard has no other posture. */
const EMISSIVITY = 0.95;
const RADIATING_SHARE = 0.73;
/** Torr to kelvin of evaporation and dry heat (Lewis), at sea level. */
const LEWIS = 2.2;
const MINUTES = 60;
/** Air that moves about a person who sits still in still air [m/s]. */
export const STILL_AIR_MPS = 0.1;

export type SkinState = { skinTempC: number; heatW: number; wettedness: number; radiativeW: number };

export const saturationTorr = (tempC: number): number => Math.exp(18.6686 - 4030.183 / (tempC + 235));

/** W/m²K by moving air, or by the person's own movement where that stirs it more (`countsActivity`). */
export function convectionW(airSpeedMps: number, met: number, countsActivity: boolean): number {
  const byAir = Math.max(3, 8.600001 * Math.max(STILL_AIR_MPS, airSpeedMps) ** 0.53);
  return countsActivity && met > 0.85 ? Math.max(byAir, 5.66 * (met - 0.85) ** 0.39) : byAir;
}

/** Skin after an hour in a condition. `countsActivity` false where the air speed counts the own movement already. */
export function skinAfterAnHour(condition: ThermalCondition, countsActivity: boolean): SkinState {
  const { airTempC, radiantTempC, relHumidityPct, metabolicRateMet: met, clothingClo, externalWorkMet = 0 } = condition;
  const airSpeed = Math.max(STILL_AIR_MPS, condition.relAirSpeedMps);
  const vapour = (relHumidityPct * saturationTorr(airTempC)) / 100;
  const clothing = 0.155 * clothingClo;
  const area = 1 + 0.15 * clothingClo;
  const mostWet = clothingClo <= 0 ? 0.38 * airSpeed ** -0.29 : 0.59 * airSpeed ** -0.08;
  const permeation = clothingClo <= 0 ? 1 : 0.45;
  const convective = convectionW(airSpeed, met, countsActivity);
  const heatMade = (met - externalWorkMet) * MET_W;

  let made = met * MET_W;
  let skinC: number = PERSON.skinNeutralC;
  let coreC: number = PERSON.coreNeutralC;
  let bloodFlow: number = PERSON.bloodFlowNeutral;
  let skinShare: number = PERSON.skinShareAtFirst;
  let evaporated = 0.1 * met;
  let radiative = 4.7;
  let dry = 0;
  let wettedness = 0;
  let surfaceC: number | null = null;
  for (let minute = 0; minute < MINUTES; minute++) {
    let airLayer = 1 / (area * (radiative + convective));
    let operativeC = (radiative * radiantTempC + convective * airTempC) / (radiative + convective);
    surfaceC ??= (airLayer * skinC + clothing * operativeC) / (airLayer + clothing);
    for (let settled = false; !settled; ) {
      radiative = 4 * EMISSIVITY * RADIATING_SHARE * STEFAN * ((surfaceC + radiantTempC) / 2 + 273.15) ** 3;
      airLayer = 1 / (area * (radiative + convective));
      operativeC = (radiative * radiantTempC + convective * airTempC) / (radiative + convective);
      const next: number = (airLayer * skinC + clothing * operativeC) / (airLayer + clothing);
      settled = Math.abs(next - surfaceC) <= 0.01;
      surfaceC = next;
    }
    dry = (skinC - operativeC) / (airLayer + clothing);
    const toSkin = (coreC - skinC) * (5.28 + 1.163 * bloodFlow);
    const breathed = 0.0023 * made * (44 - vapour) + 0.0014 * made * (34 - airTempC);
    const perKelvin = (share: number) => 0.97 * share * PERSON.massKg * 60;
    skinC += ((toSkin - dry - evaporated) * PERSON.skinAreaM2) / perKelvin(skinShare);
    coreC += ((made - toSkin - breathed - externalWorkMet * MET_W) * PERSON.skinAreaM2) / perKelvin(1 - skinShare);
    const bodyC = skinShare * skinC + (1 - skinShare) * coreC;

    const warmSkin = Math.max(0, skinC - PERSON.skinNeutralC);
    const coldSkin = Math.max(0, PERSON.skinNeutralC - skinC);
    const warmCore = Math.max(0, coreC - PERSON.coreNeutralC);
    const coldCore = Math.max(0, PERSON.coreNeutralC - coreC);
    const warmBody = Math.max(0, bodyC - PERSON.bodyNeutralC);
    bloodFlow = Math.min(90, Math.max(0.5, (PERSON.bloodFlowNeutral + 120 * warmCore) / (1 + 0.5 * coldSkin)));
    const sweat = Math.min(500, 170 * warmBody * Math.exp(warmSkin / 10.7));
    const most = (saturationTorr(skinC) - vapour) / (1 / (LEWIS * area * convective) + clothing / (LEWIS * permeation));
    [wettedness, evaporated] = evaporation(0.68 * sweat, most, mostWet);
    made = heatMade + 19.4 * coldSkin * coldCore;
    skinShare = 0.0417737 + 0.7451833 / (bloodFlow + 0.585417);
  }
  return { skinTempC: skinC, heatW: dry + evaporated, wettedness, radiativeW: radiative };
}

/** Wettedness of the skin and what evaporates [W/m²], by the sweat that would and the most that can. */
function evaporation(sweatW: number, mostW: number, mostWet: number): [wettedness: number, evaporatedW: number] {
  if (mostW < 0) return [mostWet, 0];
  const wet = 0.06 + (0.94 * sweatW) / mostW;
  if (wet <= mostWet) return [wet, wet * mostW];
  const share = mostWet / 0.94;
  return [mostWet, share * mostW + 0.06 * (1 - share) * mostW];
}
