export type PredictedZoneTemp =
  | { status: "ok"; zoneAirTempC: number }
  /** The zone is not below the target, so a lower minimum has nothing to give back. */
  | { status: "not-overcooled" }
  /** The minimum is already at or below what the zone requires. */
  | { status: "at-required-airflow" }
  /** Not a zone that is being cooled: zone air must be above supply air, airflows above 0. */
  | { status: "outside-limits"; limits: string };

/**
 * Zone air temperature [°C] that a zone now held cold at its minimum airflow would settle at with a lower one:
 * T' = min(target, T_sat + (T_z - T_sat) · V_min / V_req), reference D3. The zone's sensible load is taken as
 * unchanged and the exchange with the outdoors through the envelope is left out.
 */
export function predictedZoneTemp(now: {
  zoneAirTempC: number;
  supplyAirTempC: number;
  minimumAirflowM3ps: number;
  requiredAirflowM3ps: number;
  targetZoneAirTempC: number;
}): PredictedZoneTemp {
  if (!(now.zoneAirTempC > now.supplyAirTempC)) {
    return { status: "outside-limits", limits: "zone air must be warmer than the supply air" };
  }
  if (!(now.minimumAirflowM3ps > 0) || !(now.requiredAirflowM3ps > 0)) {
    return { status: "outside-limits", limits: "airflows must be above 0 m³/s" };
  }
  if (now.zoneAirTempC >= now.targetZoneAirTempC) return { status: "not-overcooled" };
  if (now.requiredAirflowM3ps >= now.minimumAirflowM3ps) return { status: "at-required-airflow" };
  const riseK = ((now.zoneAirTempC - now.supplyAirTempC) * now.minimumAirflowM3ps) / now.requiredAirflowM3ps;
  return { status: "ok", zoneAirTempC: Math.min(now.targetZoneAirTempC, now.supplyAirTempC + riseK) };
}
