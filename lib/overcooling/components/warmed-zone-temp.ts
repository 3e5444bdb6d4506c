/**
 * Zone air temperature [°C] at the required airflow instead of the minimum, no higher than the target (reference D3):
 * max(T_d, min(T_t, T_sat + (T_d - T_sat) · max(V_min, V_req) / V_req)). It is the present one where a lower minimum
 * changes nothing. Written out, and not by way of `predictedZoneTemp`, since it is evaluated for every zone and draw;
 * a test holds the two together.
 */
export const warmedZoneTempC = (now: {
  zoneAirTempC: number;
  supplyAirTempC: number;
  minimumAirflowM3ps: number;
  requiredAirflowM3ps: number;
  targetZoneAirTempC: number;
}): number =>
  Math.max(
    now.zoneAirTempC,
    Math.min(
      now.targetZoneAirTempC,
      now.supplyAirTempC +
        ((now.zoneAirTempC - now.supplyAirTempC) * Math.max(now.minimumAirflowM3ps, now.requiredAirflowM3ps)) /
          now.requiredAirflowM3ps,
    ),
  );
