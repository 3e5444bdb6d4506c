/** Heat that condensing water gives off [kJ/kg], density of air [kg/m³], and air pressure [Pa]. */
const LATENT_KJ_PER_KG = 2501;
const AIR_KG_PER_M3 = 1.2;
const PRESSURE_PA = 101_325;

/** Kilograms of water in a kilogram of dry air with this dew point [°C]: Magnus formula, 0.622 p / (P - p). */
export function humidityRatio(dewPointC: number): number {
  const vapourPa = 611.2 * Math.exp((17.62 * dewPointC) / (243.12 + dewPointC));
  return (0.622 * vapourPa) / (PRESSURE_PA - vapourPa);
}

/**
 * Heat of the water that the coil takes out of mixed air [kW], from the balance of moisture: outdoor air brings its own, people
 * give theirs off, exhaust carries the room's away, and supply air leaves the coil saturated at its temperature. It does not
 * follow the zones' temperature. 0 where the mixed air is dry enough.
 */
export function coilLatentKw(now: {
  airM3ps: number;
  outdoorShare: number;
  outdoorDewPointC: number;
  supplyC: number;
  peopleKgPerSecond: number;
}): number {
  const leaving = humidityRatio(now.supplyC);
  const airKgPerSecond = AIR_KG_PER_M3 * now.airM3ps;
  const room = leaving + now.peopleKgPerSecond / airKgPerSecond;
  const mixed = (1 - now.outdoorShare) * room + now.outdoorShare * humidityRatio(now.outdoorDewPointC);
  return LATENT_KJ_PER_KG * airKgPerSecond * Math.max(0, mixed - leaving);
}
