/**
 * C4a, electricity for zones held cold at minimum airflow [kWh]: UA · hours · (T' - T_z) · m / COP (reference D6 and I),
 * T' the zone air temperature at the required minimum. Most of the excess air's cooling removes real gains; only the
 * colder zone's extra heat from outdoors is waste.
 */
export const deadbandKwh = (i: {
  heatLossKwPerK: number;
  hours: number;
  zoneAirTempC: number;
  warmedZoneAirTempC: number;
  mechanicalFraction: number;
  cop: number;
}): number =>
  (i.heatLossKwPerK * i.hours * Math.max(0, i.warmedZoneAirTempC - i.zoneAirTempC) * i.mechanicalFraction) / i.cop;
