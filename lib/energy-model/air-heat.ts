/** Heat that one cubic metre of supply air carries per kelvin at sea level [kJ/m³K] (reference section 0; 1.08 Btu/h·cfm·°F). */
export const AIR_HEAT_KJ_PER_M3K = 1.206;

/** Standard atmosphere at sea level [kPa]. */
const SEA_LEVEL_KPA = 101.325;

/** The same at a site's air pressure; worth the step above 500 m (reference section 0). */
export const airHeatAtPressure = (pressureKpa: number): number => (AIR_HEAT_KJ_PER_M3K * pressureKpa) / SEA_LEVEL_KPA;

/** Sensible heat flow [kW] of an airflow that is warmed or cooled by `differenceK`: rho·cp · V · dT. */
export const sensibleHeatKw = ({ airflowM3ps, differenceK }: { airflowM3ps: number; differenceK: number }): number =>
  AIR_HEAT_KJ_PER_M3K * airflowM3ps * differenceK;
