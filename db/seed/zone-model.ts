import type { Facade } from "./sun";

/** A zone as two masses, its air (with furniture) and its structure, and what acts on them. */
export type ZoneModel = {
  floorAreaM2: number;
  facade: Facade | null;
  /** Windows and infiltration: outdoors to zone air. */
  envelopeWpK: number;
  /** Walls and roof: outdoors to structure. */
  structureToOutdoorWpK: number;
  /** Zone air to structure. */
  structureToAirWpK: number;
  /** Zone air to the rest of the building, through partitions and open doors. */
  partitionWpK: number;
  airHeatCapacityJpK: number;
  structureHeatCapacityJpK: number;
  /** Window area times solar heat gain coefficient times shading. */
  solarApertureM2: number;
  lightsW: number;
  designAirflowM3ps: number;
  minimumAirflowM3ps: number;
  /** Airflow at full heating (a box with two maximums). */
  heatingAirflowM3ps: number;
  reheatCapacityW: number;
};

/** Density of air times its specific heat [J/m³K], near sea level at room temperature (1.2 kg/m³ x 1005 J/kgK). */
export const AIR_HEAT_JPM3K = 1206;

const FACADE_LENGTH_M = 22;
const STOREY_HEIGHT_M = 3.6;
const CEILING_HEIGHT_M = 2.7;

/**
 * A zone of an office of the 1990s, perimeter or core. Coefficients are common practice, no source: 35 % glass at
 * 2.0 W/m²K and a heat gain coefficient of 0.40 with blinds half used, walls 0.5 and roof 0.3 W/m²K, 0.25 air changes
 * an hour, lights 8 W/m², 1.5 W/m²K of floor to the rest of the building through open doors.
 */
export function zoneModel(zone: {
  floorAreaM2: number;
  facade: Facade | null;
  underRoof: boolean;
  /** Airflow that a box sized for the load would have; it sets the heating. */
  neededAirflowM3ps: number;
  designAirflowM3ps: number;
  minimumFraction: number;
}): ZoneModel {
  const { floorAreaM2, designAirflowM3ps } = zone;
  const facadeM2 = zone.facade ? FACADE_LENGTH_M * STOREY_HEIGHT_M : 0;
  const windowM2 = 0.35 * facadeM2;
  const infiltrationM3ps = zone.facade ? (0.25 * floorAreaM2 * CEILING_HEIGHT_M) / 3600 : 0;
  const minimumAirflowM3ps = zone.minimumFraction * designAirflowM3ps;
  const heatingAirflowM3ps = Math.max(minimumAirflowM3ps, Math.min(0.55 * zone.neededAirflowM3ps, designAirflowM3ps));
  return {
    floorAreaM2,
    facade: zone.facade,
    envelopeWpK: 2.0 * windowM2 + AIR_HEAT_JPM3K * infiltrationM3ps,
    structureToOutdoorWpK: 0.5 * (facadeM2 - windowM2) + (zone.underRoof ? 0.3 * floorAreaM2 : 0),
    structureToAirWpK: 5 * floorAreaM2,
    partitionWpK: 1.5 * floorAreaM2,
    airHeatCapacityJpK: 5 * AIR_HEAT_JPM3K * CEILING_HEIGHT_M * floorAreaM2,
    structureHeatCapacityJpK: 150_000 * floorAreaM2,
    solarApertureM2: 0.4 * 0.6 * windowM2,
    lightsW: 8 * floorAreaM2,
    designAirflowM3ps,
    minimumAirflowM3ps,
    heatingAirflowM3ps,
    reheatCapacityW: AIR_HEAT_JPM3K * heatingAirflowM3ps * 20,
  };
}
