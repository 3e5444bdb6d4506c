const RADIANS = Math.PI / 180;

/** Which way a window looks; its azimuth from south, west positive. */
export const FACADE_AZIMUTH_DEG = { south: 0, west: 90, north: 180, east: -90 } as const;
export type Facade = keyof typeof FACADE_AZIMUTH_DEG;

export type SunAngles = { declinationRad: number; hourAngleRad: number; latitudeRad: number };

/**
 * Declination and hour angle at an hour of the year in standard time. Duffie and Beckman, Solar Engineering of Thermal
 * Processes, equations 1.5.2 (solar time), 1.5.3 (equation of time) and 1.6.1a (Cooper's declination), from memory.
 */
export function sunAngles(at: {
  hourOfYear: number;
  latitude: number;
  longitude: number;
  utcOffsetHours: number;
}): SunAngles {
  const dayOfYear = Math.floor(at.hourOfYear / 24) + 1;
  const yearAngle = (2 * Math.PI * (dayOfYear - 1)) / 365;
  const equationOfTimeMin =
    229.2 *
    (0.000075 +
      0.001868 * Math.cos(yearAngle) -
      0.032077 * Math.sin(yearAngle) -
      0.014615 * Math.cos(2 * yearAngle) -
      0.04089 * Math.sin(2 * yearAngle));
  const longitudeMin = 4 * (at.longitude - 15 * at.utcOffsetHours);
  const solarHour = (at.hourOfYear % 24) + (equationOfTimeMin + longitudeMin) / 60;
  return {
    declinationRad: 23.45 * RADIANS * Math.sin((2 * Math.PI * (284 + dayOfYear)) / 365),
    hourAngleRad: (solarHour - 12) * 15 * RADIANS,
    latitudeRad: at.latitude * RADIANS,
  };
}

/** Cosine of the zenith angle (Duffie and Beckman 1.6.5); below 0 the sun is down. */
export function cosZenith({ declinationRad, hourAngleRad, latitudeRad }: SunAngles): number {
  return (
    Math.sin(declinationRad) * Math.sin(latitudeRad) +
    Math.cos(declinationRad) * Math.cos(latitudeRad) * Math.cos(hourAngleRad)
  );
}

/** Cosine of the angle between the beam and the outward normal of a vertical wall (Duffie and Beckman 1.6.2, slope 90°). */
export function cosIncidence({ declinationRad, hourAngleRad, latitudeRad }: SunAngles, facade: Facade): number {
  const azimuthRad = FACADE_AZIMUTH_DEG[facade] * RADIANS;
  return (
    -Math.sin(declinationRad) * Math.cos(latitudeRad) * Math.cos(azimuthRad) +
    Math.cos(declinationRad) * Math.sin(latitudeRad) * Math.cos(azimuthRad) * Math.cos(hourAngleRad) +
    Math.cos(declinationRad) * Math.sin(azimuthRad) * Math.sin(hourAngleRad)
  );
}
